import type { z } from 'zod';

type RawIssue = z.core.$ZodRawIssue;

const kinds: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  tuple: 'a list',
  null: 'null',
};

const asText = (value: unknown): string => (typeof value === 'string' ? `"${value}"` : String(value));

/** The reason in plain words where the schema has none of its own. */
export const plainReason = (issue: RawIssue): string => {
  if (issue.input === undefined && issue.code === 'invalid_type') return 'is missing';
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${kinds[issue.expected] ?? issue.expected}${Number.isNaN(issue.input) ? ', not NaN' : ''}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? `must be ${asText(issue.values[0])}`
        : `must be one of ${issue.values.map(asText).join(', ')}`;
    case 'invalid_union': {
      const values = issue.errors.flat().flatMap((inner) => (inner.code === 'invalid_value' ? inner.values : []));
      return values.length > 0 ? `must be one of ${values.map(asText).join(', ')}` : 'has none of the shapes that are taken here';
    }
    case 'too_small':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `must be at least ${issue.minimum}`
        : `must have at least ${issue.minimum}${issue.origin === 'string' ? ' characters' : ''}`;
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `must be at most ${issue.maximum}`
        : `must have at most ${issue.maximum}${issue.origin === 'string' ? ' characters' : ''}`;
    case 'unrecognized_keys':
      return 'is not known here';
    default:
      return 'is not what is taken here';
  }
};
