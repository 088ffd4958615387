import { execFileSync } from "node:child_process";

/** Grey pixels, row by row: 0 black, 255 white. */
export interface Grey {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** A page of a PDF as a printer of so many dots an inch sets it: hard edges, nothing in between black and white. */
export function printed(pdf: string, page: number, dpi: number): Grey {
  const range = ["-f", String(page), "-l", String(page)];
  const hard = ["-aa", "no", "-aaVector", "no", "-gray"];
  const bytes = execFileSync("pdftoppm", ["-r", String(dpi), ...range, ...hard, pdf], { maxBuffer: 1 << 28 });
  // P5, width, height, 255, each followed by white space, then the pixels.
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  if (head === null) throw new Error("pdftoppm writes grey pixels");
  return {
    width: Number(head[1]),
    height: Number(head[2]),
    pixels: new Uint8Array(bytes.subarray(head[0].length)),
  };
}

const at = ({ width, height, pixels }: Grey, x: number, y: number): number =>
  x < 0 || y < 0 || x >= width || y >= height ? 255 : (pixels[y * width + x] ?? 255);

/** A print as a camera sees it: larger, turned, and out of focus. @param blurPx half the side of the square that a point is spread over */
export function seen(print: Grey, scale: number, turnDeg: number, blurPx: number): Grey {
  const turn = (turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const side = Math.ceil(scale * Math.hypot(print.width, print.height)) + 20;
  const sharp: Grey = { width: side, height: side, pixels: new Uint8Array(side * side) };
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const [dx, dy] = [x - side / 2, y - side / 2];
      const px = Math.floor((cos * dx + sin * dy) / scale + print.width / 2);
      const py = Math.floor((-sin * dx + cos * dy) / scale + print.height / 2);
      sharp.pixels[y * side + x] = at(print, px, py);
    }
  return blurPx === 0 ? sharp : blurred(blurred(sharp, blurPx, 1, 0), blurPx, 0, 1);
}

/** The mean of the pixels on both sides along one axis. */
function blurred(grey: Grey, blurPx: number, stepX: number, stepY: number): Grey {
  const pixels = new Uint8Array(grey.pixels.length);
  for (let y = 0; y < grey.height; y++)
    for (let x = 0; x < grey.width; x++) {
      let sum = 0;
      for (let i = -blurPx; i <= blurPx; i++) sum += at(grey, x + i * stepX, y + i * stepY);
      pixels[y * grey.width + x] = Math.round(sum / (2 * blurPx + 1));
    }
  return { ...grey, pixels };
}

/** The same as a picture in colours, as readers of codes take it. */
export function inColour({ width, height, pixels }: Grey) {
  const data = new Uint8ClampedArray(4 * pixels.length);
  pixels.forEach((grey, i) => {
    data.set([grey, grey, grey, 255], 4 * i);
  });
  return { width, height, data, colorSpace: "srgb" as const };
}
