// Which length of pipe sounds D2? Asks all at once: node tubes.mjs COMMAND, where COMMAND starts ColumnTool.

import { Engine, NoAnswer } from "./engine.mjs";

const tube = (millimetres) => ({
  column: 1,
  air: { temperature: "20 °C", humidity: "50 %" },
  sections: [{ shape: "cylinder", diameter: "38 mm", length: `${millimetres} mm` }],
  farEnd: { kind: "open", wall: "3 mm" },
});

const signed = (number) => (number < 0 ? "" : "+") + number.toFixed(1);

const engine = new Engine(process.argv.slice(2));
const lengths = [1100, 1120, 1140, 1160, 1180, 1200];
const asked = lengths.map((length) => engine.ask("resonances", { document: tube(length), count: 1 }));
for (const [i, { resonances }] of (await Promise.all(asked)).entries()) {
  const { frequencyHz, pitch, cents } = resonances[0];
  console.log(`${lengths[i]} mm  ${frequencyHz.toFixed(3)} Hz  ${pitch} ${signed(cents)} cents`);
}

const found = await engine.ask("length", { document: tube(1100), section: 1, pitch: "D2" });
console.log(`D2: ${(found.lengthMetres * 1000).toFixed(2)} mm`);

try {
  await engine.ask("length", { document: tube(-5), section: 1, pitch: "D2" });
} catch (problem) {
  if (!(problem instanceof NoAnswer)) throw problem;
  console.log(`${problem.code}, ${problem.place}: ${problem.message}`);
}

await engine.close();
