/**
 * A way to hold the last few of what was reckoned, by what it depends on: asked again with the same key, it is not reckoned again. Only for
 * what nobody changes afterwards.
 * @param keep how many to hold; the one asked for longest ago goes first
 */
export const lastFew = <Value>(keep = 4) => {
  const held = new Map<string, Value>();
  return (key: string, reckon: () => Value): Value => {
    const value = held.has(key) ? held.get(key)! : reckon();
    held.delete(key);
    held.set(key, value);
    if (held.size > keep) held.delete(held.keys().next().value!);
    return value;
  };
};
