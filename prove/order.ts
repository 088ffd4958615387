/**
 * Orders the nodes of TSPLIB instances as closed tours and as open paths from node 0 with the usual effort, and writes
 * values and bounds beside the published lengths to `results/order.csv`, the orders to `results/order-orders.csv`.
 *
 *     npx tsx prove/order.ts
 */
import { shortestPathOrder, shortestTourOrder } from "@pinwright/kernel";
import { readTsp } from "../packages/kernel/src/optimise/testing/tsp.ts";
import { tourInstances } from "./instances.ts";
import { percent, writeResults } from "./write-results.ts";

const rows: string[] = [];
const orders: string[] = [];
for (const { name, file, optimum } of tourInstances()) {
  const matrix = readTsp(file);
  const tour = shortestTourOrder(matrix);
  const path = shortestPathOrder(matrix, 0);
  const row = [
    name,
    matrix.length,
    tour.value,
    tour.lowerBound.toFixed(2),
    optimum,
    percent(tour.value, optimum),
    percent(optimum, tour.lowerBound),
    path.value,
    path.lowerBound.toFixed(2),
    percent(path.value, path.lowerBound),
  ].join(",");
  process.stdout.write(`${row}\n`);
  rows.push(row);
  orders.push(
    `${name},tour,${tour.value},${tour.order.join(" ")}`,
    `${name},path,${path.value},${path.order.join(" ")}`,
  );
}
writeResults(
  "order.csv",
  "instance,nodes,tour,tour_bound,optimum,tour_gap_pct,optimum_over_bound_pct,path,path_bound,path_over_bound_pct",
  rows,
);
writeResults("order-orders.csv", "instance,kind,value,order", orders);
