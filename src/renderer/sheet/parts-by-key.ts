import { useEffect } from 'react';

/** The parts of the sheet in their order: what is being done, the plan, the work, the margin, the calendar. */
const partsOf = (): readonly HTMLElement[] => [...document.querySelectorAll<HTMLElement>('[data-part]')];

/** Where the keyboard enters a part. */
const entryOf = (part: HTMLElement): HTMLElement | null =>
  part.tabIndex === 0 ? part : part.querySelector<HTMLElement>('[aria-current], [tabindex="0"], input');

let last: Element | null = null;

/** Puts the keyboard on the next part of the sheet, or with −1 on the one before. */
export const goToPart = (step: 1 | -1): void => {
  const parts = partsOf();
  // What was pressed may be gone since; its part is still known.
  const now = document.activeElement?.closest('[data-part]') ?? last;
  const at = parts.findIndex((part) => part === now);
  const next = parts[at < 0 ? (step > 0 ? 0 : parts.length - 1) : (at + step + parts.length) % parts.length];
  if (next) entryOf(next)?.focus();
};

/** F6 and Shift+F6 go from part to part, as windows have it: no page is so long that the next part is far. */
export const usePartsByKey = (): void => {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      goToPart(event.shiftKey ? -1 : 1);
    };
    const onFocus = (event: FocusEvent): void => {
      last = (event.target as Element).closest('[data-part]') ?? last;
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('focusin', onFocus);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('focusin', onFocus);
    };
  }, []);
};
