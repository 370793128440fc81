import { useEffect, useState, type RefObject } from 'react';

/** Width and height of an element in pixels, followed as it changes. */
export const useBoxSize = (
  element: RefObject<Element | null>,
  first: { width: number; height: number },
): { width: number; height: number } => {
  const [size, setSize] = useState(first);
  useEffect(() => {
    if (!element.current) return;
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect;
      if (width > 0 && height > 0)
        setSize((old) =>
          Math.abs(old.width - width) < 1 && Math.abs(old.height - height) < 1
            ? old
            : { width: Math.round(width), height: Math.round(height) },
        );
    });
    watch.observe(element.current);
    return () => watch.disconnect();
  }, [element]);
  return size;
};
