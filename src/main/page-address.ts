/** The pages' own scheme: a standard, secure origin that no web site can have. */
export const pageScheme = 'fieldback';
export const pageOrigin = `${pageScheme}://pages`;
export const firstPage = `${pageOrigin}/index.html`;

/** Whether an address is one of our own pages. */
export const isOurs = (address: string): boolean => {
  try {
    const { protocol, host } = new URL(address);
    return protocol === `${pageScheme}:` && host === 'pages';
  } catch {
    return false;
  }
};
