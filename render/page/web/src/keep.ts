// What the browser keeps for a design from one visit to the next: by the design's path, with
// a version, and of bounded length. What is of another version, or damaged, is as if it were
// not there; where storage is forbidden nothing is kept.

/** The most characters that are kept of one thing: browsers give a page about five million in all, and three designs are to find room. */
const MOST = 1_500_000;

function key(what: string, path: string): string {
  return `pappus-${what}:${path}`;
}

/** What was kept; null: nothing of use. */
export function kept<T>(what: string, path: string, version: number): T | null {
  try {
    const text = localStorage.getItem(key(what, path));
    if (text === null) return null;
    const held = JSON.parse(text) as { version: number; value: T };
    return held.version === version ? held.value : null;
  } catch {
    return null;
  }
}

/** Keeps a value, or tells that it cannot. */
export function keep(what: string, path: string, version: number, value: unknown): boolean {
  try {
    const text = JSON.stringify({ version, value });
    if (text.length > MOST) return false;
    localStorage.setItem(key(what, path), text);
    return true;
  } catch {
    return false;
  }
}

/** Forgets it. */
export function forget(what: string, path: string): void {
  try {
    localStorage.removeItem(key(what, path));
  } catch {
    // then there is nothing
  }
}
