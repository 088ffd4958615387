import { rows, type Topic } from "./author.ts";

export const playfieldPanel: Topic = {
  tables: {
    panels: rows("panels", [
      {
        id: "playfield",
        label: "Playfield",
        label_zh: "台面",
        purpose: "playfield",
        width_mm: 514,
        height_mm: 1067,
        thickness_mm: 13,
        material: "birch plywood, 9 plies, faced and clear-coated",
        wood: "hardwood",
        grain: "y",
      },
    ]),
  },
};
