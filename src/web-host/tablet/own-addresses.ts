import { networkInterfaces } from 'node:os';

/** Addresses by which other machines of the network reach this one. */
export const ownAddresses = (): readonly string[] =>
  Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    // An address of the link alone is of no use in a browser.
    .filter((one) => !one.internal && !one.address.startsWith('fe80:'))
    .map((one) => one.address);
