import { glossary } from '#shared/wording/glossary.ts';
import type { Verb } from './verbs.ts';

/** The words of a page where they are met, for whoever opens them; nothing lies over the work. */
export const PageWords = ({ verb }: { verb: Verb }) => (
  <details className="page-words">
    <summary>Words on this page</summary>
    <dl>
      {Object.entries(glossary[verb]).map(([word, meaning]) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
  </details>
);
