// The page's colours of data: a map from dark to light, the same as the
// pictures', and colours for channels that colour-blind people can tell apart: eight
// of M. Okabe and K. Ito (Color Universal Design, 2008), and fourteen that are as far
// from those and from each other as those are, 0.076 in Oklab (B. Ottosson, 2020), in
// normal sight and in the three kinds of colour blindness (Machado, Oliveira and
// Fernandes, IEEE TVCG 15 (2009) 1291). Each also carries its number, so that colour
// never says anything alone; beyond twenty-two they come again, in a dashed ring.

export type RGB = readonly [number, number, number];

const ANCHORS =
  "1b143e 241745 2e1b4c 381e54 41225b 4b2563 55296a 602d70 6c316f 79356e 853a6e " +
  "903e6d 9c436c a8476b b34c6a be5169 c75967 cc6167 d16b66 d67464 db7e63 e18761 " +
  "e69060 eb995e efa25c f2ac68 f5b574 f7bf80 f8c88d fad299 fbdba5 fce5b2 fceebe";

function split(hex: string): RGB {
  const n = Number.parseInt(hex, 16);
  return [n >> 16, (n >> 8) & 255, n & 255];
}

/** The map in 256 shades. */
export const SHADES: readonly RGB[] = (() => {
  const at = ANCHORS.split(" ").map(split);
  return Array.from({ length: 256 }, (_, i) => {
    const x = (i / 255) * (at.length - 1);
    const low = at[Math.floor(x)]!;
    const high = at[Math.min(Math.floor(x) + 1, at.length - 1)]!;
    const part = x - Math.floor(x);
    return [0, 1, 2].map((k) => Math.round(low[k]! + part * (high[k]! - low[k]!))) as unknown as RGB;
  });
})();

/** The colour of a share from 0 to 1, which is clipped to it. */
export function shade(share: number): RGB {
  return SHADES[Math.round(255 * Math.min(Math.max(share, 0), 1))]!;
}

/** The same as a pixel of four bytes, in the machine's own order. */
const PACKED = new Uint32Array(new Uint8Array(SHADES.flatMap(([r, g, b]) => [r, g, b, 255])).buffer);

export function packed(share: number): number {
  return PACKED[Math.round(255 * Math.min(Math.max(share, 0), 1))]!;
}

/** Those of Okabe and Ito, then the ones that are each the furthest from all before it. */
const CHANNELS: readonly RGB[] = (
  "e69f00 56b4e9 009e73 f0e442 0072b2 d55e00 cc79a7 3b3b3b " +
  "99ffff 4400dd 775566 9966ff aaccaa 770088 aa3300 440055 ccffaa 66ddee 550000 880000 cc0099 bbaa77"
).split(" ").map(split);

/** The colour of a channel, by its number from 1. */
export function channelColour(id: number): RGB {
  return CHANNELS[(id - 1) % CHANNELS.length]!;
}

/** Which time round a channel's colour is: 0 for the first channels, each of its own colour. */
export function colourRound(id: number): number {
  return Math.floor((id - 1) / CHANNELS.length);
}

export function css([r, g, b]: RGB): string {
  return `rgb(${r} ${g} ${b})`;
}

/** Black or white, whichever is easier to read on a colour (relative luminance by WCAG 2). */
export function inkOn(c: RGB): string {
  const [r, g, b] = c.map((v) => {
    const s = v / 255;
    return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b > 0.18 ? "#1a1712" : "#ffffff";
}
