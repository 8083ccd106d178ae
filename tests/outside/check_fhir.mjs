// Checks FHIR bundles with the npm package `fhir` (R4).
//
//     npm install --prefix DIR fhir
//     NODE_MODULES=DIR/node_modules node tests/outside/check_fhir.mjs visit.fhir.json ...
//
// Exit code 0 if every file is valid, whole and each of its resources alone.
// Messages about codes of code systems that the package does not hold are warnings, and counted.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const modules = process.env.NODE_MODULES ?? join(process.cwd(), "node_modules");
const { Fhir } = createRequire(join(modules, "here.js"))("fhir");
const fhir = new Fhir();

const paths = process.argv.slice(2);
if (paths.length === 0) {
  console.error("which bundle?");
  process.exit(1);
}
let failed = false;
for (const path of paths) {
  const bundle = JSON.parse(readFileSync(path, "utf8"));
  const parts = [bundle, ...bundle.entry.map((entry) => entry.resource)];
  let warnings = 0;
  for (const part of parts) {
    const result = fhir.validate(part, { errorOnUnexpected: true });
    for (const message of result.messages) {
      if (message.severity === "error" || message.severity === "fatal") {
        failed = true;
        console.error(`${path}: ${part.resourceType}: ${message.location}: ${message.message}`);
      } else {
        warnings += 1;
      }
    }
    if (!result.valid) {
      failed = true;
      console.error(`${path}: ${part.resourceType} is not valid`);
    }
  }
  console.log(`${path}: npm fhir (R4) looked at ${parts.length} parts, ${warnings} warnings`);
}
process.exit(failed ? 1 : 0);
