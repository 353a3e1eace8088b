// Opens pages that the program wrote in a real browser and holds them to what they promise: no error, no request, the picker and the lit
// circuits by mouse and by keyboard, no serious violation that axe-core knows of, no drawing cut in print, the same content without scripts.
// How to run: node .ci/pages.mjs MODULES PAGE... where MODULES holds node_modules with playwright-core and axe-core; PICTURES names a folder for screenshots.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [modules, ...files] = process.argv.slice(2);
const require = createRequire(path.resolve(modules, "node_modules/"));
const { chromium } = require("playwright-core");
const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const papers = { A4: [210, 297], Letter: [215.9, 279.4] };
const margin = 12;
const pixels = millimetres => millimetres / 25.4 * 96;
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || "/usr/bin/chromium", args: ["--no-sandbox"] });
let wrong = 0;

for (const file of files) {
  const url = pathToFileURL(path.resolve(file)).href;
  const name = path.basename(file, ".html");
  const faults = [];
  const expect = (holds, what) => holds || faults.push(what);
  for (const scheme of ["light", "dark"]) {
    const page = await browser.newPage({ colorScheme: scheme, viewport: { width: 1280, height: 900 } });
    page.on("console", message => message.type() === "error" && faults.push(`console: ${message.text()}`));
    page.on("pageerror", error => faults.push(`script: ${error.message}`));
    page.on("request", request => request.url() === url || faults.push(`asks for ${request.url()}`));
    page.on("dialog", dialog => { faults.push(`dialog: ${dialog.message()}`); dialog.dismiss(); });
    await page.goto(url);
    if (process.env.PICTURES) await page.screenshot({ path: path.join(process.env.PICTURES, `${name}-${scheme}.png`), fullPage: true });
    // axe-core is put in past the page's own policy, which lets no other script in.
    const session = await page.context().newCDPSession(page);
    await session.send("Runtime.evaluate", { expression: axe });
    // The dark page differs in nothing but its colours.
    const found = await page.evaluate(only => axe.run(only ? { runOnly: [only] } : {}), scheme === "dark" ? "color-contrast" : null);
    for (const violation of found.violations.filter(each => ["serious", "critical"].includes(each.impact)))
      faults.push(`${scheme}: ${violation.id} (${violation.impact}): ${violation.nodes.slice(0, 3).map(node => node.html.slice(0, 150)).join(" | ")}`);
    if (scheme === "light") await use(page, expect);
    await page.close();
  }
  await print(url, name, expect);
  await withoutScripts(url, expect);
  for (const fault of new Set(faults)) console.log(`${name}: ${fault}`);
  console.log(faults.length ? `${name}: ${faults.length} faults` : `ok: ${name}`);
  wrong += faults.length;
}

await browser.close();
process.exit(wrong ? 1 : 0);

async function use(page, expect) {
  const radios = page.locator(".picker input[type=radio]");
  const gears = await radios.count();
  if (gears === 0) return;
  const shown = () => page.locator(".gear:visible").evaluateAll(all => all.map(each => each.id).join());
  for (let i = 0; i < gears; i++) {
    await page.locator(`label:has(#pick-${i})`).click();
    expect(await shown() === `gear-${i}`, `the mouse picks gear ${i}, shown: ${await shown()}`);
  }
  await page.locator("#pick-0").focus();
  await page.keyboard.press("Space");
  if (gears > 1) {
    await page.keyboard.press("ArrowRight");
    expect(await shown() === "gear-1", "the arrow key picks the next gear");
    await page.keyboard.press("ArrowLeft");
  }
  const passages = page.locator("#gear-0 g.symbol[role=button]");
  expect(await passages.count() > 0, "passages can be chosen");
  const first = passages.first();
  const circuit = await first.getAttribute("data-circuit");
  const lit = () => page.locator("#gear-0 g.symbol.lit").evaluateAll(all => [...new Set(all.map(each => each.dataset.circuit))].join());
  await first.click({ position: { x: 4, y: 4 }, force: true });
  expect(await lit() === circuit, `a click lights ${circuit}, lit: ${await lit()}`);
  expect((await page.locator("#lit").textContent()).includes(circuit), "it is told in words");
  await first.focus();
  await page.keyboard.press("Escape");
  expect(await lit() === "", "Escape puts it out");
  await page.keyboard.press("Enter");
  expect(await lit() === circuit, "Enter lights it");
  await page.keyboard.press(" ");
  expect(await lit() === "", "the space bar puts it out");
  const pictures = await page.locator("svg").evaluateAll(all => all.filter(each => !each.querySelector("title")?.textContent || !each.querySelector("desc")?.textContent).length);
  expect(pictures === 0, `${pictures} pictures without a text alternative`);
}

async function print(url, name, expect) {
  for (const [paper, [width, height]] of Object.entries(papers)) {
    const page = await browser.newPage({ viewport: { width: Math.floor(pixels(width - 2 * margin)), height: 900 } });
    await page.emulateMedia({ media: "print" });
    await page.goto(url);
    // What the browser tells a page before it prints it.
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    const parts = await page.locator("figure.part svg").evaluateAll(all => all.map(each => ({ view: each.getAttribute("viewBox").split(" ").map(Number), width: each.getBoundingClientRect().width, drawn: each.querySelector("use").getBoundingClientRect().width, font: getComputedStyle(each.ownerDocument.querySelector("svg.oil-circuit text:not([class])")).fontSize })));
    const wanted = await page.locator(".picker:has(input:checked) figure[data-parts]").count();
    expect(parts.length > 1 === wanted > 0, `${paper}: ${parts.length} parts of a drawing too wide for the paper`);
    for (const { view, width, drawn, font } of parts) {
      const points = parseFloat(font) * width / view[2] * 72 / 96;
      expect(points > 5.99, `${paper}: lettering of ${points.toFixed(2)} points`);
      expect(drawn > width, `${paper}: a part shows nothing`);
    }
    const cut = await page.locator("svg").evaluateAll((all, [right, tallest]) => all.map(each => each.getBoundingClientRect())
      .filter(box => box.width === 0 || box.left < -1 || box.right > right + 1 || box.height > tallest).map(box => `${Math.round(box.width)} x ${Math.round(box.height)}`),
      [pixels(width - 2 * margin), pixels(height - 2 * margin)]);
    expect(cut.length === 0, `${paper}: drawings are cut or not shown: ${cut.join(", ")}`);
    const loose = await page.locator("figure").evaluateAll(all => all.filter(each => getComputedStyle(each).breakInside !== "avoid").length);
    expect(loose === 0, `${paper}: ${loose} drawings may be broken between pages`);
    const pdf = await page.pdf({ format: paper, path: process.env.PICTURES ? path.join(process.env.PICTURES, `${name}-${paper}.pdf`) : undefined });
    expect(pdf.length > 1000, `${paper}: no PDF`);
    await page.close();
  }
}

async function withoutScripts(url, expect) {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(url);
  const gears = await page.locator(".picker input[type=radio]").count();
  if (gears > 1) {
    await page.locator("label:has(#pick-1)").click();
    expect(await page.locator(".gear:visible").count() === 1 && await page.locator("#gear-1").isVisible(), "the picker works without scripts");
  }
  expect((await page.locator("main").innerText()).length > 200, "the page is there without scripts");
  await context.close();
}
