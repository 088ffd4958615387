import type { SomeTables } from "../../testing/book.ts";
import { TYPES } from "./arbitrary.ts";

/** Two kickers, two lamps and a rail's screw on one panel, and the designer's test and packing. */
export const GOLDEN: SomeTables = {
  ...TYPES,
  devices: [
    { id: "lp.1", type: "dt.lamp", panel: "field", side: "under", x_mm: 50, y_mm: 50 },
    { id: "lp.2", type: "dt.lamp", panel: "field", side: "under", x_mm: 150, y_mm: 50 },
  ],
  mechanisms: [
    {
      id: "mech.left",
      label: "Left kicker",
      type: "mt.kick",
      panel: "field",
      side: "under",
      x_mm: 100,
      y_mm: 300,
    },
    {
      id: "mech.right",
      label: "Right kicker",
      type: "mt.kick",
      panel: "field",
      side: "under",
      x_mm: 300,
      y_mm: 300,
    },
  ],
  fasteners: [
    { id: "fx.1", type: "ft.a", panel: "field", side: "under", x_mm: 50, y_mm: 50, holds: "lp.1" },
    { id: "fx.2", type: "ft.a", panel: "field", side: "under", x_mm: 150, y_mm: 50, holds: "lp.2" },
    { id: "fx.rail", type: "ft.b", panel: "field", side: "top", x_mm: 10, y_mm: 400 },
  ],
  steps: [
    { id: "st.test", label: "End test", skill: "test", minutes: 30, station: "stn.test" },
    { id: "st.pack", label: "Pack", after: ["st.test"], minutes: 5 },
  ],
  stations: [
    { id: "stn.line", skills: ["mechanism"] },
    { id: "stn.test", skills: ["test"] },
  ],
};
