import { useCallback, useState } from "react";

/** Layers of the drawing, from the ground up. */
export const LAYERS = [
  "cutouts",
  "mechanisms",
  "boards",
  "devices",
  "inlines",
  "fasteners",
  "lanes",
  "waypoints",
  "wires",
  "labels",
  "findings",
  "other",
] as const;

export type Layer = (typeof LAYERS)[number];
export type Layers = Readonly<Record<Layer, boolean>>;

const USUAL: Layers = {
  cutouts: true,
  mechanisms: true,
  boards: true,
  devices: true,
  inlines: true,
  fasteners: true,
  lanes: true,
  waypoints: true,
  wires: true,
  labels: true,
  findings: true,
  other: false,
};
const KEY = "pinwright.layout.hidden";

function kept(): Layers {
  const said = localStorage.getItem(KEY);
  if (said === null) return USUAL;
  const hidden = new Set(said.split(" "));
  const layers: Record<Layer, boolean> = { ...USUAL };
  for (const layer of LAYERS) layers[layer] = !hidden.has(layer);
  return layers;
}

/** Which layers are shown; this browser remembers it. */
export function useLayers(): readonly [Layers, (layer: Layer, shown: boolean) => void] {
  const [layers, setLayers] = useState(kept);
  const set = useCallback((layer: Layer, shown: boolean) => {
    setLayers((before) => {
      const after = { ...before, [layer]: shown };
      localStorage.setItem(KEY, LAYERS.filter((one) => !after[one]).join(" "));
      return after;
    });
  }, []);
  return [layers, set];
}
