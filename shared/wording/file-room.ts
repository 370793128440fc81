/** Bytes of a file, and how many of them lie free inside it. */
interface Room {
  readonly bytes: number;
  readonly spare: number;
}

/** Bytes below which giving them back is not worth a person's moment. */
const worthwhile = 4 * 2 ** 20;

/** Whether so much of a file lies free that giving it back to the disk is offered: four megabytes, and a quarter of the file. */
export const muchLiesFree = ({ bytes, spare }: Room): boolean => spare >= worthwhile && spare * 4 >= bytes;

/** "812 kB", "59.3 MB" */
export const roomWords = (bytes: number): string =>
  bytes < 2 ** 20 ? `${Math.ceil(bytes / 1024)} kB` : `${(bytes / 2 ** 20).toFixed(1)} MB`;
