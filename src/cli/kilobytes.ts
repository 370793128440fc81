/** The size of a file in words. */
export const kilobytes = (bytes: number): string => `${Math.ceil(bytes / 1024)} kB`;
