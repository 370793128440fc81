import { pageHeaders } from '#platform/pages/built-pages.ts';
import type { BuiltPage } from '#platform/pages/built-pages.ts';
import { isOurs } from '#main/page-address.ts';

/** Answers the pages' own scheme from the list of built pages; everything else does not exist. */
export const servePages =
  (pages: ReadonlyMap<string, BuiltPage>) =>
  (request: Request): Response => {
    const path = new URL(request.url).pathname;
    const page = isOurs(request.url) && request.method === 'GET' ? pages.get(path === '/' ? '/index.html' : path) : undefined;
    if (page === undefined) return new Response(null, { status: 404 });
    return new Response(page.bytes, { headers: pageHeaders(page) });
  };
