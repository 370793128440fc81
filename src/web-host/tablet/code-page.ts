import { createHash } from 'node:crypto';

const style = `body{font:18px/1.4 sans-serif;margin:10vh auto;max-width:22em;padding:0 1em;background:#fbfaf6;color:#1c1b19}
input,button{font:inherit;box-sizing:border-box;width:100%;min-height:52px;margin:6px 0;padding:6px 12px}
input{font-size:28px;text-align:center;letter-spacing:.1em}
button{background:#1d5159;color:#fff;border:0}
p[role]{color:#8a3b12}`;

/** The one page a tablet sees before its code is known: no script, nothing from elsewhere. */
export const codePage = (refused: string | null): string => `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Fieldback: code</title>
<style>${style}</style>
<h1>Fieldback</h1>
<p>Type the code that stands where Fieldback was started. It is good once.</p>
${refused === null ? '' : `<p role="alert">${refused}</p>`}
<form method="post" action="/code">
<label>Code <input name="code" inputmode="numeric" autocomplete="one-time-code" maxlength="9" required autofocus></label>
<button>Come in</button>
</form>
<p>Before you do: does the fingerprint in your browser’s warning agree with the one shown there?</p>
</html>
`;

export const codePageHeaders = {
  'content-type': 'text/html; charset=utf-8',
  'cache-control': 'no-store',
  'content-security-policy': `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'`,
  'x-content-type-options': 'nosniff',
  // Not `no-referrer`: a browser then sends its form with the origin `null` (Fetch, append a request `Origin` header), which is refused.
  'referrer-policy': 'same-origin',
} as const;
