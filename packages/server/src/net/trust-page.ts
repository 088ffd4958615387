import { X509Certificate } from "node:crypto";
import { toSVG } from "bwip-js/node";
import { secure } from "../http/security-headers.ts";
import { fingerprint } from "./authority.ts";
import { TRUST_WORDS, type TrustWords } from "./trust-words.ts";

/** Address of the certificate on the plain port. */
const CERTIFICATE_PATH = "/pinwright.crt";

export interface TrustPlace {
  /** Address of the app. */
  readonly home: string;
  /** Certificate of the authority of our own; null: the owner brought one, and there is nothing to install. */
  readonly authority: string | null;
}

const STYLE = `
:root { color-scheme: light dark; }
body { font: 1rem/1.5 system-ui, sans-serif; max-width: 46rem; margin: 2rem auto; padding: 0 1rem; }
a.button { display: inline-block; padding: .7rem 1.2rem; border: 2px solid; border-radius: 2px; margin: .5rem .5rem .5rem 0; color: inherit; }
code { font-size: 1.05rem; overflow-wrap: anywhere; }
svg { width: 12rem; height: 12rem; background: #fff; padding: .75rem; }
section + section { border-top: 1px solid; margin-top: 2.5rem; padding-top: 1rem; }
`;

const inHtml = (text: string): string => text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);

function sectionOf(words: TrustWords, home: string, print: string): string {
  const devices = words.devices.map(
    ({ name, steps }) =>
      `<h3>${inHtml(name)}</h3><ol>${steps.map((s) => `<li>${inHtml(s)}</li>`).join("")}</ol>`,
  );
  return `<section lang="${words.language}">
<h2>${inHtml(words.title)}</h2>
<p>${inHtml(words.lead)}</p>
<p><a class="button" href="${CERTIFICATE_PATH}">${inHtml(words.download)}</a>
<a class="button" href="${inHtml(home)}">${inHtml(words.open)}</a><br>${inHtml(words.openNote)}</p>
<p>${inHtml(words.compare)}<br>SHA-256: <code>${print}</code></p>
${devices.join("\n")}
</section>`;
}

function page(home: string, authority: string): string {
  const plain = home.replace(/^https:/, "http:");
  const code = toSVG({ bcid: "qrcode", text: plain });
  const print = fingerprint(authority);
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>Pinwright</title><style>${STYLE}</style></head><body>
<h1>Pinwright</h1>
${TRUST_WORDS.map((words) => sectionOf(words, home, print)).join("\n")}
<section><p>${TRUST_WORDS.map((words) => `<span lang="${words.language}">${inHtml(words.code)}</span>`).join("<br>")}<br>
<code>${inHtml(plain)}</code></p>
<div role="img" aria-label="QR: ${inHtml(plain)}">${code}</div></section>
</body></html>`;
}

/** Answers on the plain port of the network: the page, the certificate, and for the rest the way to HTTPS. */
export async function trustPage(request: Request, { home, authority }: TrustPlace): Promise<Response> {
  const { pathname } = new URL(request.url);
  const headers = new Headers({ "cache-control": "no-store" });
  let body: string | Uint8Array<ArrayBuffer> | null = null;
  let status = 200;
  if (request.method !== "GET" && request.method !== "HEAD") status = 405;
  else if (authority !== null && pathname === "/") {
    body = page(home, authority);
    headers.set("content-type", "text/html; charset=utf-8");
    headers.set(
      "content-security-policy",
      "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'",
    );
  } else if (authority !== null && pathname === CERTIFICATE_PATH) {
    body = new Uint8Array(new X509Certificate(authority).raw);
    headers.set("content-type", "application/x-x509-ca-cert");
    headers.set("content-disposition", 'attachment; filename="pinwright.crt"');
  } else {
    status = 308;
    headers.set("location", `${home}${pathname}`);
  }
  secure(headers);
  return new Response(request.method === "HEAD" ? null : body, { status, headers });
}
