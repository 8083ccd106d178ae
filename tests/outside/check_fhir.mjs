// Checks FHIR bundles with the npm package `fhir` (R4).
//
//     npm install --prefix DIR fhir
//     NODE_MODULES=DIR/node_modules node tests/outside/check_fhir.mjs visit.fhir.json ...
//
// Exit code 0 if every file is valid, whole and each of its resources alone.
// The package does not hold LOINC, UCUM or the project's own codes: that it cannot find a value set
// or a code in one is counted; any other message is a failure.

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
  let unknown = 0;
  for (const part of parts) {
    const result = fhir.validate(part, { errorOnUnexpected: true });
    for (const message of result.messages) {
      const notHeld = /^Value set ".*" could not be found|^Code ".*" .*not found in value set/;
      if (["info", "warning"].includes(message.severity) && notHeld.test(message.message)) {
        unknown += 1;
      } else {
        failed = true;
        console.error(`${path}: ${part.resourceType}: ${message.location}: ${message.message}`);
      }
    }
    if (!result.valid) {
      failed = true;
      console.error(`${path}: ${part.resourceType} is not valid`);
    }
  }
  console.log(`${path}: npm fhir (R4) looked at ${parts.length} parts, ${unknown} codes or value sets that it does not hold`);
}
process.exit(failed ? 1 : 0);
