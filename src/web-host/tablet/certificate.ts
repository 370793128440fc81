import { generateKeyPairSync, randomBytes, sign, X509Certificate } from 'node:crypto';
import { isIPv6 } from 'node:net';
import { bits, integer, labelled, objectId, octets, sequence, set, tagged, text, truth, utcTime } from '#web-host/tablet/der.ts';

/** What a server shows and signs with. Nobody vouches for it: a person compares the fingerprint. */
export interface OwnCertificate {
  /** PEM */
  readonly certificate: string;
  /** PEM */
  readonly key: string;
  /** SHA-256 of the certificate as browsers show it: `AB:CD:…`. */
  readonly fingerprint: string;
}

const day = 86_400_000;
const ecdsaWithSha256 = sequence(objectId('1.2.840.10045.4.3.2'));

/** The bytes of an IPv4 or IPv6 address. */
const addressBytes = (address: string): Buffer => {
  if (!isIPv6(address)) return Buffer.from(address.split('.').map(Number));
  const [left = '', right] = address.split('%')[0]!.split('::');
  const groups = (half: string): string[] => (half === '' ? [] : half.split(':'));
  const [head, tail] = [groups(left), groups(right ?? '')];
  const middle = Array.from({ length: right === undefined ? 0 : 8 - head.length - tail.length }, () => '0');
  return Buffer.concat([...head, ...middle, ...tail].map((group) => Buffer.from(group.padStart(4, '0'), 'hex')));
};

const extension = (id: string, value: Uint8Array, critical = false): Buffer =>
  sequence(objectId(id), ...(critical ? [truth] : []), octets(value));

/**
 * A certificate of one's own for one address: version 3, ECDSA on P-256 with SHA-256, for a server and nothing else. Its key lives in
 * memory alone and it is made anew at every start, so that there is no secret to lose on the disk.
 * @param now epoch ms; it holds from an hour before (tablets' clocks run behind) for two weeks
 * @source RFC 5280, section 4.1 and 4.2
 */
export const ownCertificate = (address: string, now: number): OwnCertificate => {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const name = sequence(set(sequence(objectId('2.5.4.3'), text(`Fieldback at ${address}`))));
  const toBeSigned = sequence(
    tagged(0, integer(Buffer.from([2]))),
    integer(Buffer.concat([Buffer.from([1]), randomBytes(15)])),
    ecdsaWithSha256,
    name,
    sequence(utcTime(now - day / 24), utcTime(now + 14 * day)),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    tagged(
      3,
      sequence(
        // No authority: it vouches for nobody else.
        extension('2.5.29.19', sequence(), true),
        // Digital signature; seven of the eight bits are unused.
        extension('2.5.29.15', bits(Buffer.from([0x80]), 7), true),
        // A server.
        extension('2.5.29.37', sequence(objectId('1.3.6.1.5.5.7.3.1'))),
        // The address it stands for.
        extension('2.5.29.17', sequence(labelled(7, addressBytes(address)))),
      ),
    ),
  );
  const signature = sign('sha256', toBeSigned, { key: privateKey, dsaEncoding: 'der' });
  const certificate = new X509Certificate(sequence(toBeSigned, ecdsaWithSha256, bits(signature)));
  return {
    certificate: certificate.toString(),
    key: String(privateKey.export({ type: 'pkcs8', format: 'pem' })),
    fingerprint: certificate.fingerprint256,
  };
};
