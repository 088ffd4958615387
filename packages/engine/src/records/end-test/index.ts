export { testWalk, type WalkStretch } from "./test-walk.ts";
