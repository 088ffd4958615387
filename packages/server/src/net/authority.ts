import "reflect-metadata";
import { createHash, X509Certificate as NodeCertificate, webcrypto } from "node:crypto";
import { join } from "node:path";
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  cryptoProvider,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  Extension,
  KeyUsageFlags,
  KeyUsagesExtension,
  PemConverter,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from "@peculiar/x509";
import { textOf, writeSecret } from "./key-file.ts";
import { encodeNameConstraints, isLocalAddress, isPermitted, NAME_CONSTRAINTS } from "./name-constraints.ts";
import type { OwnNames } from "./names.ts";

cryptoProvider.set(webcrypto);

const DAY_MS = 24 * 60 * 60 * 1000;
/** How long certificates hold. Browsers refuse one of a server that holds 398 days or more. */
const HOLDS_MS = { authority: 3652 * DAY_MS, server: 390 * DAY_MS } as const;
/** A server's certificate is made anew when it holds less than this. */
const RENEW_MS = 60 * DAY_MS;
/** Clocks of tablets may be slow. */
const SLOW_MS = DAY_MS;

const KEY = { name: "ECDSA", namedCurve: "P-256" } as const;
const SIGNATURE = { name: "ECDSA", hash: "SHA-256" } as const;

/** A certificate with its key, as PEM. */
export interface Certificate {
  readonly certificatePem: string;
  readonly keyPem: string;
}

/** SHA-256 of a certificate as devices show it: `A1:B2:…`. */
export function fingerprint(certificatePem: string): string {
  const hex = createHash("sha256")
    .update(new NodeCertificate(certificatePem).raw)
    .digest("hex")
    .toUpperCase();
  return hex.match(/../g)?.join(":") ?? "";
}

const newKeys = (): Promise<webcrypto.CryptoKeyPair> =>
  webcrypto.subtle.generateKey(KEY, true, ["sign", "verify"]);

const pemOfKey = async (key: webcrypto.CryptoKey): Promise<string> =>
  PemConverter.encode(await webcrypto.subtle.exportKey("pkcs8", key), "PRIVATE KEY");

const keyOfPem = (pem: string): Promise<webcrypto.CryptoKey> =>
  webcrypto.subtle.importKey("pkcs8", PemConverter.decodeFirst(pem), KEY, false, ["sign"]);

/** A positive number of 127 bits that is made once (RFC 5280, 4.1.2.2). */
function serialNumber(): string {
  const bytes = webcrypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return Buffer.from(bytes).toString("hex");
}

/** An authority of our own, which a tablet installs once. It signs servers only, nothing below it. */
export async function makeAuthority(names: OwnNames, now: number): Promise<Certificate> {
  const keys = await newKeys();
  const host = names.dns.find((name) => name !== "localhost") ?? "this computer";
  const certificate = await X509CertificateGenerator.createSelfSigned({
    serialNumber: serialNumber(),
    name: [
      { CN: [`Pinwright on ${host} ${new Date(now).toISOString().slice(0, 10)}`] },
      { O: ["Pinwright"] },
    ],
    notBefore: new Date(now - SLOW_MS),
    notAfter: new Date(now + HOLDS_MS.authority),
    keys,
    signingAlgorithm: SIGNATURE,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      new Extension(NAME_CONSTRAINTS, true, encodeNameConstraints(names.dns)),
    ],
  });
  return { certificatePem: certificate.toString("pem"), keyPem: await pemOfKey(keys.privateKey) };
}

/** Names that a certificate of an authority may carry: one that it may not vouch for would spoil the others. */
function namesFor(
  authority: X509Certificate,
  names: OwnNames,
): readonly { type: "dns" | "ip"; value: string }[] {
  const constraints = new Uint8Array(authority.getExtension(NAME_CONSTRAINTS)?.value ?? new ArrayBuffer(0));
  return [
    ...names.dns
      .filter((name) => isPermitted(constraints, name))
      .map((value) => ({ type: "dns" as const, value })),
    ...names.ips.filter(isLocalAddress).map((value) => ({ type: "ip" as const, value })),
  ];
}

/** A certificate for this server, signed by the authority. */
export async function issue(authority: Certificate, names: OwnNames, now: number): Promise<Certificate> {
  const issuer = new X509Certificate(authority.certificatePem);
  const keys = await newKeys();
  const certificate = await X509CertificateGenerator.create({
    serialNumber: serialNumber(),
    subject: [{ CN: ["Pinwright"] }],
    issuer: issuer.subject,
    notBefore: new Date(now - SLOW_MS),
    notAfter: new Date(Math.min(now + HOLDS_MS.server, issuer.notAfter.getTime())),
    publicKey: keys.publicKey,
    signingKey: await keyOfPem(authority.keyPem),
    signingAlgorithm: SIGNATURE,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension([...namesFor(issuer, names)]),
      await AuthorityKeyIdentifierExtension.create(issuer.publicKey),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { certificatePem: certificate.toString("pem"), keyPem: await pemOfKey(keys.privateKey) };
}

/** Whether a server's certificate is of this authority, holds long enough, and has the names of now. */
function stillGood(certificate: Certificate, authority: Certificate, names: OwnNames, now: number): boolean {
  const own = new X509Certificate(certificate.certificatePem);
  const issuer = new X509Certificate(authority.certificatePem);
  if (own.issuer !== issuer.subject || own.notAfter.getTime() - now < RENEW_MS) return false;
  const node = new NodeCertificate(certificate.certificatePem);
  return (
    node.verify(new NodeCertificate(authority.certificatePem).publicKey) &&
    namesFor(issuer, names).every(({ type, value }) =>
      type === "ip" ? node.checkIP(value) !== undefined : node.checkHost(value) !== undefined,
    )
  );
}

/** Keeps a certificate with its key in two files of a folder, readable by the server alone. */
async function kept(folder: string, name: string, make: () => Promise<Certificate>): Promise<Certificate> {
  const files = { certificate: join(folder, `${name}.crt`), key: join(folder, `${name}.key`) };
  const certificatePem = await textOf(files.certificate);
  const keyPem = await textOf(files.key);
  if (certificatePem !== null && keyPem !== null) return { certificatePem, keyPem };
  const made = await make();
  await writeSecret(files.key, made.keyPem);
  await writeSecret(files.certificate, made.certificatePem);
  return made;
}

/** The authority of a data folder, made at the first call. */
export const authorityOf = (folder: string, names: OwnNames, now: number): Promise<Certificate> =>
  kept(folder, "authority", () => makeAuthority(names, now));

/** The server's certificate of a data folder, made anew before it ends or when the computer has other names. */
export async function serverCertificateOf(
  folder: string,
  authority: Certificate,
  names: OwnNames,
  now: number,
): Promise<Certificate> {
  const known = await kept(folder, "server", () => issue(authority, names, now));
  if (stillGood(known, authority, names, now)) return known;
  const made = await issue(authority, names, now);
  await writeSecret(join(folder, "server.key"), made.keyPem);
  await writeSecret(join(folder, "server.crt"), made.certificatePem);
  return made;
}
