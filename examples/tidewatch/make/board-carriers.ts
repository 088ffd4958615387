/** Frame of the carriers of the solder bath: boards lie in it side by side, either way round. */
const CARRIER_MM = { width: 210, depth: 120 } as const;
/** Rim of the carrier round each board. */
const RIM_MM = 4;

/** How many boards of a type one carrier takes. */
export function inCarrier(widthMm: number, depthMm: number): number {
  const lying = (width: number, depth: number): number =>
    Math.floor(CARRIER_MM.width / (width + RIM_MM)) * Math.floor(CARRIER_MM.depth / (depth + RIM_MM));
  return Math.max(1, lying(widthMm, depthMm), lying(depthMm, widthMm));
}
