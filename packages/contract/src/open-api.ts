import { z } from "zod";
import { problemSchema } from "./problem.ts";
import type { Route } from "./route.ts";
import { ROUTES, TOKEN_HEADER } from "./routes.ts";

const jsonOf = (schema: z.ZodType, io: "input" | "output") => {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io, unrepresentable: "any" });
  return rest;
};

const json = (schema: z.ZodType, io: "input" | "output") => ({
  "application/json": { schema: jsonOf(schema, io) },
});

function parameters({ path, query, method }: Route) {
  const parts = [...path.matchAll(/:(\w+)/g)].map((match) => ({
    name: match[1] ?? "",
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
  const shape = query instanceof z.ZodObject ? query.shape : {};
  const asked = Object.entries(shape).map(([name, schema]) => ({
    name,
    in: "query",
    required: !(schema instanceof z.ZodType && schema.safeParse(undefined).success),
    schema: schema instanceof z.ZodType ? jsonOf(schema, "input") : {},
  }));
  const token = { name: TOKEN_HEADER, in: "header", required: true, schema: { type: "string" } };
  return [...parts, ...asked, ...(method === "get" ? [] : [token])];
}

function operation(name: string, route: Route) {
  const body =
    route.body !== undefined
      ? { requestBody: { required: true, content: json(route.body, "input") } }
      : route.takesFile
        ? {
            requestBody: {
              required: true,
              content: { "application/octet-stream": { schema: { type: "string", format: "binary" } } },
            },
          }
        : {};
  const content =
    route.answer !== undefined
      ? json(route.answer, "output")
      : {
          [route.path === ROUTES.events.path ? "text/event-stream" : "application/octet-stream"]: {
            schema: {},
          },
        };
  return {
    operationId: name,
    summary: route.about,
    description: route.role === "anyone" ? "For anyone." : `For role ${route.role} or above.`,
    parameters: parameters(route),
    ...body,
    responses: {
      "200": { description: "Done.", content },
      default: { description: "Refused, and why.", content: json(problemSchema, "output") },
    },
  };
}

/** The OpenAPI 3.1 document of the whole API, made from the same schemas that check every request. */
export function openApi(version: string) {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const [name, route] of Object.entries<Route>(ROUTES)) {
    const path = route.path.replace(/:(\w+)/g, "{$1}");
    paths[path] = { ...paths[path], [route.method]: operation(name, route) };
  }
  return { openapi: "3.1.0", info: { title: "Pinwright", version }, paths };
}
