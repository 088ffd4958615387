import { expect, it } from "vitest";
import { ExampleModel } from "../testing/example-model.ts";
import { search } from "./search.ts";

const example = new ExampleModel();

it("finds things by id, by name, and by kind and number as people say it, in both languages", () => {
  const { now } = example;
  const numbered = [...now.line.machine.items.values()].flatMap((item) =>
    item.kind === "device" && item.type.class === "lamp" && item.number !== null ? [item] : [],
  );
  const lamp = numbered[0];
  if (lamp === undefined) throw new Error("the example has a lamp with a number");
  for (const text of [
    lamp.id,
    lamp.labels.en,
    `lamp ${lamp.number}`,
    `Lamp ${lamp.number}`,
    `灯 ${lamp.number}`,
  ])
    expect(search(now, text)[0]?.id, text).toBe(lamp.id);
  expect(search(now, "nothing is called so")).toEqual([]);
  expect(search(now, "  ")).toEqual([]);
});
