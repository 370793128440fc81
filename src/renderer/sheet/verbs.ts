/** What the person is doing: the parts of the work, in the order it goes. */
export const verbs = ['book', 'foresee', 'compare', 'recover', 'inspect', 'settle', 'report', 'venue'] as const;
export type Verb = (typeof verbs)[number];
