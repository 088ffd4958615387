/**
 * What a page of ours may load and who may show it: everything from here, no script in the page, nothing framed.
 * Styles may stand in the page, because the controls place themselves by them; a style runs nothing. The reader of labels
 * is compiled from a file of ours (`wasm-unsafe-eval` lets in that and no text that becomes a script).
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "connect-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

/** Policy of a file that people made or that was made from what they typed: nothing in it runs. */
export const FILE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox; frame-ancestors 'none'";

const HEADERS: Readonly<Record<string, string>> = {
  "content-security-policy": POLICY,
  "x-content-type-options": "nosniff",
  "x-frame-options": "DENY",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(self), geolocation=(), microphone=(), payment=(), usb=()",
};

/** Puts the headers on an answer, where it does not bring a stricter one of its own. */
export function secure(headers: Headers): void {
  for (const [name, value] of Object.entries(HEADERS)) if (!headers.has(name)) headers.set(name, value);
}
