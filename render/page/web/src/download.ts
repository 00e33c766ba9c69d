// Files for the browser to keep.

import { make } from "./dom";

/** Hands a file to the browser. */
export function download(name: string, what: Blob): void {
  const link = make("a", { href: URL.createObjectURL(what), download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
