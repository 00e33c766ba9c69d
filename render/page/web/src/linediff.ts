// Two texts line by line: which lines went and which came.

export interface Line {
  kind: "same" | "gone" | "came";
  text: string;
}

/** The most pairs of lines that are compared; beyond, all that differs is told as gone and come. */
const MOST_PAIRS = 1_000_000;
/** So many lines that are the same are shown before and after one that is not. */
const ROUND = 2;

/** The lines of both by a longest common subsequence (Wagner and Fischer, J. ACM 21 (1974) 168). */
export function difference(was: string, is: string): Line[] {
  const a = was.split("\n");
  const b = is.split("\n");
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
  const same = (lines: string[]): Line[] => lines.map((text) => ({ kind: "same", text }));
  return [...same(a.slice(0, head)), ...middle(a.slice(head, a.length - tail), b.slice(head, b.length - tail)), ...same(a.slice(a.length - tail))];
}

function middle(a: string[], b: string[]): Line[] {
  if (a.length * b.length > MOST_PAIRS) return [...a.map((text): Line => ({ kind: "gone", text })), ...b.map((text): Line => ({ kind: "came", text }))];
  const wide = b.length + 1;
  const long = new Uint32Array((a.length + 1) * wide); // of the common lines from i and j on
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      long[i * wide + j] = a[i] === b[j] ? long[(i + 1) * wide + j + 1]! + 1 : Math.max(long[(i + 1) * wide + j]!, long[i * wide + j + 1]!);
  const out: Line[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) out.push({ kind: "same", text: a[(j++, i++)]! });
    else if (j >= b.length || (i < a.length && long[(i + 1) * wide + j]! >= long[i * wide + j + 1]!)) out.push({ kind: "gone", text: a[i++]! });
    else out.push({ kind: "came", text: b[j++]! });
  }
  return out;
}

/** What is shown of a difference: what changed with a few lines round it. Null stands for lines that are left out. */
export function shortened(lines: Line[]): (Line | null)[] {
  const near = (i: number): boolean => lines.slice(Math.max(i - ROUND, 0), i + ROUND + 1).some((l) => l.kind !== "same");
  const out: (Line | null)[] = [];
  for (const [i, line] of lines.entries()) {
    if (near(i)) out.push(line);
    else if (out.at(-1) !== null) out.push(null);
  }
  return out;
}
