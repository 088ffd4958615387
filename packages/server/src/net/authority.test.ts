import "reflect-metadata";
import { webcrypto } from "node:crypto";
import { mkdtemp, rm, stat } from "node:fs/promises";
import { createServer as createHttps, get } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  PemConverter,
  SubjectAlternativeNameExtension,
  X509Certificate,
  X509CertificateGenerator,
} from "@peculiar/x509";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { authorityOf, fingerprint, issue, makeAuthority, serverCertificateOf } from "./authority.ts";

const NOW = Date.UTC(2026, 2, 31);
const EC = { name: "ECDSA", namedCurve: "P-256" } as const;
const DAY_MS = 86_400_000;
const NAMES = {
  dns: ["localhost", "office", "office.local"],
  ips: ["192.168.7.20", "127.0.0.1", "::1"],
  network: ["192.168.7.20"],
};

/** What a browser that trusts the authority says to a server with this certificate. */
function visit(
  host: string,
  ca: string,
  server: { certificatePem: string; keyPem: string },
): Promise<string> {
  return new Promise((resolve, reject) => {
    const https = createHttps({ cert: server.certificatePem, key: server.keyPem }, (_, answer) => {
      answer.end("hello");
    });
    https.listen(0, "127.0.0.1", () => {
      const address = https.address();
      const port = typeof address === "object" && address !== null ? address.port : 0;
      const request = get(
        {
          host: "127.0.0.1",
          port,
          servername: host.includes(":") ? "" : host,
          ca,
          agent: false,
          checkServerIdentity: (_, certificate) =>
            certificate.subjectaltname?.includes(host) ? undefined : new Error(`not for ${host}`),
        },
        (answer) => {
          answer.resume();
          answer.on("end", () => https.close(() => resolve("trusted")));
        },
      );
      request.on("error", (error) => https.close(() => reject(error)));
    });
  });
}

describe("authority", () => {
  const now = Date.now();
  it("is trusted for the names of this computer by whoever installed it, and by nobody else", async () => {
    const authority = await makeAuthority(NAMES, now);
    const server = await issue(authority, NAMES, now);
    for (const host of ["office", "office.local", "localhost"])
      expect(await visit(host, authority.certificatePem, server)).toBe("trusted");
    const other = await makeAuthority(NAMES, now);
    await expect(visit("office", other.certificatePem, server)).rejects.toThrow();
  });

  it("cannot vouch for a name of the internet, even with its key stolen", async () => {
    const authority = await makeAuthority(NAMES, now);
    // `issue` leaves such names out; a thief would not.
    const keys = await webcrypto.subtle.generateKey(EC, true, ["sign", "verify"]);
    const stolen = PemConverter.decodeFirst(authority.keyPem);
    const certificate = await X509CertificateGenerator.create({
      subject: "CN=bank.example",
      issuer: new X509Certificate(authority.certificatePem).subject,
      notBefore: new Date(now - DAY_MS),
      notAfter: new Date(now + DAY_MS),
      publicKey: keys.publicKey,
      signingKey: await webcrypto.subtle.importKey("pkcs8", stolen, EC, false, ["sign"]),
      signingAlgorithm: { name: "ECDSA", hash: "SHA-256" },
      extensions: [new SubjectAlternativeNameExtension([{ type: "dns", value: "bank.example" }])],
    });
    const key = await webcrypto.subtle.exportKey("pkcs8", keys.privateKey);
    const forged = {
      certificatePem: certificate.toString("pem"),
      keyPem: PemConverter.encode(key, "PRIVATE KEY"),
    };
    const own = await issue(
      authority,
      { ...NAMES, dns: ["bank.example", "office"], ips: ["8.8.8.8", "10.1.2.3"] },
      now,
    );
    await expect(visit("bank.example", authority.certificatePem, forged)).rejects.toThrow(
      "permitted subtree",
    );
    await expect(visit("bank.example", authority.certificatePem, own)).rejects.toThrow("not for");
    expect(await visit("office", authority.certificatePem, own)).toBe("trusted");
  });
});

describe("certificates of a data folder", () => {
  let folder = "";
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-keys-"));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it("are made once, readable by the server alone, and renewed before they end or when names change", async () => {
    const authority = await authorityOf(folder, NAMES, NOW);
    expect(await authorityOf(folder, NAMES, NOW + DAY_MS)).toEqual(authority);
    for (const name of ["authority.key", "authority.crt"])
      expect((await stat(join(folder, name))).mode & 0o777).toBe(0o600);
    const first = await serverCertificateOf(folder, authority, NAMES, NOW);
    expect(await serverCertificateOf(folder, authority, NAMES, NOW + 300 * DAY_MS)).toEqual(first);
    const renewed = await serverCertificateOf(folder, authority, NAMES, NOW + 340 * DAY_MS);
    expect(renewed).not.toEqual(first);
    const moved = { ...NAMES, ips: ["192.168.7.99"], network: ["192.168.7.99"] };
    expect(await serverCertificateOf(folder, authority, moved, NOW + 341 * DAY_MS)).not.toEqual(renewed);
    expect(fingerprint(authority.certificatePem)).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
  });
});
