import type { OpenAPIV3_1 } from "openapi-types";

const METHODS = ["get", "put", "post", "delete", "patch"] as const;

/** The description of the interface as a page to read: no script, nothing from elsewhere. */
export function openApiPage(document: OpenAPIV3_1.Document): string {
  const operations = Object.entries(document.paths ?? {}).flatMap(([path, item]) =>
    METHODS.flatMap((method) => {
      const operation = item?.[method];
      return operation === undefined ? [] : [operationPart(method, path, operation)];
    }),
  );
  const schemas = Object.entries(document.components?.schemas ?? {}).map(
    ([name, schema]) => `<h3 id="schema-${escaped(name)}">${escaped(name)}</h3>${jsonBlock(schema)}`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(document.info.title)}: interface for programs</title>
<link rel="stylesheet" href="/api/1/docs.css">
</head>
<body>
<h1>${escaped(document.info.title)}: interface for programs</h1>
<p>${escaped(document.info.description ?? "")} For machines: <a href="/api/1/openapi.json">openapi.json</a>.</p>
<h2>Requests</h2>
${operations.join("\n")}
<h2>Shapes</h2>
${schemas.join("\n")}
</body>
</html>
`;
}

export const OPENAPI_PAGE_STYLE = `body { max-width: 60rem; margin: 2rem auto; padding: 0 1rem; font: 16px/1.5 system-ui, sans-serif; color: #1c1c1c; background: #fff; }
h3 { margin: 2rem 0 0.25rem; font-size: 1.05rem; }
h3 code { font-size: 1rem; overflow-wrap: anywhere; }
table { border-collapse: collapse; }
td, th { padding: 0.25rem 0.75rem 0.25rem 0; text-align: left; vertical-align: top; }
pre { padding: 0.75rem; overflow: auto; border: 1px solid #999; }
`;

function operationPart(method: string, path: string, operation: OpenAPIV3_1.OperationObject): string {
  const { summary, description, parameters, requestBody, responses } = operation;
  return [
    `<section><h3><code>${method.toUpperCase()} ${escaped(path)}</code></h3>`,
    ...[summary, description].filter((text) => text !== undefined).map((text) => `<p>${escaped(text)}</p>`),
    parametersTable(parameters ?? []),
    contentPart("Body", requestBody),
    ...Object.entries(responses ?? {})
      .filter(([status]) => status !== "default")
      .map(([status, response]) => contentPart(`Answer ${status}`, response)),
    "</section>",
  ].join("\n");
}

function parametersTable(parameters: NonNullable<OpenAPIV3_1.OperationObject["parameters"]>): string {
  const rows = parameters.map((parameter) => {
    if ("$ref" in parameter) return `<tr><td colspan="3">${escaped(parameter.$ref)}</td></tr>`;
    const need = parameter.required === true ? "needed" : "optional";
    const cells = [parameter.name, `${parameter.in}, ${need}`, parameter.description ?? ""];
    return `<tr>${cells.map((cell) => `<td>${escaped(cell)}</td>`).join("")}</tr>`;
  });
  return rows.length === 0
    ? ""
    : `<table><tr><th>Parameter</th><th>Where</th><th>What</th></tr>${rows.join("")}</table>`;
}

function contentPart(
  title: string,
  part: OpenAPIV3_1.RequestBodyObject | OpenAPIV3_1.ResponseObject | OpenAPIV3_1.ReferenceObject | undefined,
): string {
  if (part === undefined) return "";
  if ("$ref" in part) return `<p>${escaped(title)}: ${escaped(part.$ref)}</p>`;
  const contents = Object.entries(part.content ?? {});
  const description = part.description === undefined ? "" : `. ${part.description}`;
  if (contents.length === 0) return `<p>${escaped(`${title}${description}`)}</p>`;
  return contents
    .map(
      ([type, { schema }]) =>
        `<details><summary>${escaped(title)} <code>${escaped(type)}</code></summary>${jsonBlock(schema ?? {})}</details>`,
    )
    .join("\n");
}

const jsonBlock = (value: unknown): string => `<pre>${escaped(JSON.stringify(value, null, 2))}</pre>`;

const SIGNS: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);
