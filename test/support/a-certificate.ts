import { generateKeyPairSync, sign, X509Certificate, type KeyObject } from 'node:crypto';

/** A certificate with the key that it is about. */
export interface TestCertificate {
  /** PEM. */
  readonly certificate: string;
  /** PEM. */
  readonly key: string;
}

/** An authority that signs certificates for as long as a test runs; nothing outside of the test trusts it. */
export interface TestAuthority extends TestCertificate {
  /** A server's certificate for this machine, by name and by address, with that of the authority. */
  certify(): TestCertificate & { readonly authority: string };
}

/** From long before any test to long after it. */
const validity = (): Buffer => sequence(time('20200101000000Z'), time('21200101000000Z'));

/** Makes an authority of its own. Certificates by ITU-T X.509 and RFC 5280, keys on P-256. */
export function anAuthority(name = 'Test authority'): TestAuthority {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const issuer = named(name);
  const own = signed({ issuer, subject: issuer, publicKey, extensions: [isAuthority()] }, privateKey);
  const authority = pemOf(own, privateKey);
  return {
    ...authority,
    certify: () => {
      const keys = generateKeyPairSync('ec', { namedCurve: 'P-256' });
      const about = { issuer, subject: named('Test broker'), publicKey: keys.publicKey, extensions: [ofThisMachine()] };
      return { ...pemOf(signed(about, privateKey), keys.privateKey), authority: authority.certificate };
    },
  };
}

interface Certified {
  readonly issuer: Buffer;
  readonly subject: Buffer;
  readonly publicKey: KeyObject;
  readonly extensions: readonly Buffer[];
}

let serial = 0;

function signed({ issuer, subject, publicKey, extensions }: Certified, key: KeyObject): Buffer {
  serial += 1;
  // ecdsa-with-SHA256.
  const algorithm = sequence(objectId('2a8648ce3d040302'));
  const version3 = tagged(0xa0, tagged(0x02, Buffer.from([2])));
  const number = tagged(0x02, Buffer.from([serial]));
  const subjectKey = publicKey.export({ type: 'spki', format: 'der' });
  const stated = [version3, number, algorithm, issuer, validity(), subject, subjectKey];
  const body = sequence(...stated, tagged(0xa3, sequence(...extensions)));
  return sequence(body, algorithm, bits(sign('sha256', body, key)));
}

function pemOf(certificate: Buffer, key: KeyObject): TestCertificate {
  const pem = new X509Certificate(certificate).toString();
  return { certificate: pem, key: key.export({ type: 'pkcs8', format: 'pem' }).toString() };
}

/** A name of one part, the common name. */
function named(name: string): Buffer {
  return sequence(tagged(0x31, sequence(objectId('550403'), tagged(0x0c, Buffer.from(name)))));
}

/** Basic constraints, which must be understood: it may sign certificates. */
function isAuthority(): Buffer {
  const yes = tagged(0x01, Buffer.from([0xff]));
  return sequence(objectId('551d13'), yes, tagged(0x04, sequence(yes)));
}

/** Other names of the subject: `localhost` and 127.0.0.1. */
function ofThisMachine(): Buffer {
  const names = sequence(tagged(0x82, Buffer.from('localhost')), tagged(0x87, Buffer.from([127, 0, 0, 1])));
  return sequence(objectId('551d11'), tagged(0x04, names));
}

const sequence = (...parts: readonly Buffer[]): Buffer => tagged(0x30, ...parts);
const objectId = (hex: string): Buffer => tagged(0x06, Buffer.from(hex, 'hex'));
const time = (text: string): Buffer => tagged(0x18, Buffer.from(text));
const bits = (content: Buffer): Buffer => tagged(0x03, Buffer.from([0]), content);

/** A value of DER (ITU-T X.690): its tag, its length, its content. */
function tagged(tag: number, ...parts: readonly Buffer[]): Buffer {
  const content = Buffer.concat(parts);
  const { length } = content;
  const size = length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}
