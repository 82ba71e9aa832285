// Holds a manifest of a Job against the schema that Kubernetes publishes, in an empty folder:
//   npm install kubernetes-models js-yaml
//   cp .../samples/Studies/kubernetes-check.mjs . && node kubernetes-check.mjs .../samples/Studies/kubernetes-job.yaml
// Types, required keys and allowed values are checked; a key that the schema does not know is passed over by it.
import { readFileSync } from "node:fs";
import { load } from "js-yaml";
import { Job } from "kubernetes-models/batch/v1";

const manifest = load(readFileSync(process.argv[2], "utf8"));
new Job(manifest).validate();

// A check that cannot fail tells nothing.
for (const spoil of [(job) => (job.spec.completions = "eight"), (job) => delete job.spec.template]) {
  const spoiled = structuredClone(manifest);
  spoil(spoiled);
  let passed = true;
  try {
    new Job(spoiled).validate();
  } catch {
    passed = false;
  }
  if (passed) {
    throw new Error("The schema passes a spoiled manifest.");
  }
}

console.log(`${process.argv[2]}: a ${manifest.kind} of ${manifest.apiVersion}, as its schema asks.`);
