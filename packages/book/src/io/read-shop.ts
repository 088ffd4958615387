import { resolve } from "node:path";
import { readBookFiles } from "../csv/files.ts";
import { FaultLog } from "../fault-log.ts";
import type { ReadShop } from "../read/book.ts";
import { emptyShop } from "../read/empty.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import { isFolder, readShopFiles } from "./read-folder.ts";

/** Reads the tables of a shop from its folder. A folder that is not there is a fault. */
export async function readShop(path: string): Promise<ReadShop> {
  const log = new FaultLog();
  const place = resolve(path);
  if (!(await isFolder(place))) {
    log.add({ code: "file-missing", file: path, expected: "a folder with the tables of a shop" });
    return { shop: emptyShop(), faults: log.list() };
  }
  const { shop, faults } = readBookFiles(await readShopFiles(place, log), log);
  // A shop's folder has no machine.
  return { shop: shop ?? emptyShop(), faults: faults.filter((fault) => fault.file !== MACHINE_FILE) };
}
