import type { BoxMm, PointMm } from "@pinwright/kernel";

/** A place on the screen, in pixels from the drawing's upper left corner. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
}

export interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

/** What part of a panel is looked at, how large, and from which side. */
export interface Camera {
  /** Pixels for a millimetre. */
  readonly scale: number;
  /** Where the panel's origin is on the screen. */
  readonly x: number;
  readonly y: number;
  /** An underside is drawn as the builder sees it: x runs to the left. */
  readonly mirrored: boolean;
}

const LEAST_SCALE = 0.05;
const MOST_SCALE = 60;

export const toScreen = (camera: Camera, { xMm, yMm }: PointMm): ScreenPoint => ({
  x: camera.x + (camera.mirrored ? -xMm : xMm) * camera.scale,
  y: camera.y - yMm * camera.scale,
});

export const toPanel = (camera: Camera, { x, y }: ScreenPoint): PointMm => {
  const right = (x - camera.x) / camera.scale;
  return { xMm: camera.mirrored ? -right : right, yMm: (camera.y - y) / camera.scale };
};

export const panned = (camera: Camera, dx: number, dy: number): Camera => ({
  ...camera,
  x: camera.x + dx,
  y: camera.y + dy,
});

/** Larger or smaller about a place on the screen that stays where it is. */
export function zoomed(camera: Camera, factor: number, at: ScreenPoint): Camera {
  const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, camera.scale * factor));
  const k = scale / camera.scale;
  return { ...camera, scale, x: at.x + (camera.x - at.x) * k, y: at.y + (camera.y - at.y) * k };
}

/** Pixels that are left free round what is fitted. */
const MARGIN_PX = 32;

/** The camera that shows a box whole and in the middle; `most` limits how large. */
export function fitted(box: BoxMm, size: ScreenSize, mirrored: boolean, most = MOST_SCALE): Camera {
  const width = Math.max(box.maxXMm - box.minXMm, 1);
  const height = Math.max(box.maxYMm - box.minYMm, 1);
  const scale = Math.min(
    most,
    Math.max(
      LEAST_SCALE,
      Math.min(
        Math.max(size.width - 2 * MARGIN_PX, 40) / width,
        Math.max(size.height - 2 * MARGIN_PX, 40) / height,
      ),
    ),
  );
  const middleX = (box.minXMm + box.maxXMm) / 2;
  const middleY = (box.minYMm + box.maxYMm) / 2;
  return {
    scale,
    mirrored,
    x: size.width / 2 - (mirrored ? -middleX : middleX) * scale,
    y: size.height / 2 + middleY * scale,
  };
}

/** The part of the panel that is on the screen. */
export function seenBox(camera: Camera, size: ScreenSize): BoxMm {
  const a = toPanel(camera, { x: 0, y: 0 });
  const b = toPanel(camera, { x: size.width, y: size.height });
  return {
    minXMm: Math.min(a.xMm, b.xMm),
    maxXMm: Math.max(a.xMm, b.xMm),
    minYMm: Math.min(a.yMm, b.yMm),
    maxYMm: Math.max(a.yMm, b.yMm),
  };
}

/** Half steps of twofold enlargement: what is drawn in more or less detail changes only between them. */
export const stepOf = (scale: number): number => Math.round(Math.log2(scale) * 2);
export const scaleOfStep = (step: number): number => 2 ** (step / 2);

/** A round length in mm that is at most `px` pixels long: 1, 2 or 5 times a power of ten. */
export function barMm(scale: number, px: number): number {
  const most = px / scale;
  const power = 10 ** Math.floor(Math.log10(most));
  const digit = [5, 2, 1].find((d) => d * power <= most) ?? 1;
  return digit * power;
}
