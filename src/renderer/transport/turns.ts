/*
 * Answers take time, on a tablet's network most of all; a person does not wait for them.
 */

/**
 * Says of every beginning, later, whether no other was begun since: an answer that comes late is not laid over what was asked after it.
 *
 * @example const begin = newestOnly(); … const isNewest = begin(); const answer = await …; if (isNewest()) show(answer);
 */
export const newestOnly = (): (() => () => boolean) => {
  let begun = 0;
  return () => {
    const mine = ++begun;
    return () => mine === begun;
  };
};

/**
 * What is under way is not begun a second time: a button pressed twice acts once, and both presses get the same answer.
 * @param keyOf tells things apart that may be under way together
 */
export const oneAtATime = <Words extends readonly unknown[], Value>(
  act: (...words: Words) => Promise<Value>,
  keyOf: (...words: Words) => unknown = () => null,
): ((...words: Words) => Promise<Value>) => {
  const underWay = new Map<unknown, Promise<Value>>();
  return (...words) => {
    const key = keyOf(...words);
    const already = underWay.get(key);
    if (already) return already;
    const begun = act(...words).finally(() => underWay.delete(key));
    underWay.set(key, begun);
    return begun;
  };
};
