export { FasteningSolver, NO_FASTENING } from "./fastening-solver.ts";
