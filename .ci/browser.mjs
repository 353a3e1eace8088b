// Opens reports in a real browser, as someone who got one by mail would: node .ci/browser.mjs CHROMIUM MODULES FILE...
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const [chromium, modules, ...files] = process.argv.slice(2);
const require = createRequire(`${modules}/`);
const { chromium: browserType } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const faults = [];
const browser = await browserType.launch({ executablePath: chromium, args: ['--no-sandbox'] });

function check(file, holds, what) {
  if (!holds) faults.push(`${file}: ${what}`);
}

async function open(file, options, media) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.on('console', message => check(file, message.type() !== 'error', `console: ${message.text()}`));
  page.on('pageerror', error => check(file, false, `script: ${error}`));
  page.on('request', request => check(file, request.url() === pathToFileURL(file).href, `asks for ${request.url()}`));
  if (media) await page.emulateMedia(media);
  await page.goto(pathToFileURL(file).href);
  return { page, context };
}

/** No drawing and no table may be cut: whatever is laid out lies within the page. */
async function cut(page) {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    return [...document.querySelectorAll('svg, table, h1, h2, h3, p, li')].filter(part => {
      const box = part.getBoundingClientRect();
      return box.width > 0 && (box.right > width + 1 || box.left < -1);
    }).map(part => part.tagName + ' ' + (part.id || part.textContent.trim().slice(0, 30)));
  });
}

for (const file of files) {
  // Without scripts: everything is there, every gear stands on the page.
  const plain = await open(file, { javaScriptEnabled: false });
  check(file, await plain.page.locator('.gear').count() === await plain.page.locator('.gear:visible').count(), 'hides a gear where scripts do not run');
  await plain.context.close();

  for (const colorScheme of ['light', 'dark']) {
    const { page, context } = await open(file, { viewport: { width: 1280, height: 900 } }, { colorScheme });
    const gears = await page.locator('.gear').count();
    const links = page.locator('.picker a');
    check(file, gears === await links.count() && gears > 0, 'has another number of gears than of links to them');
    if (gears > 1) {
      check(file, await page.locator('.gear:visible').count() === 1, 'shows more than one gear');
      await links.nth(gears - 1).click();
      check(file, await page.locator('.gear').nth(gears - 1).isVisible(), 'does not show the gear that was clicked');
      await links.nth(0).focus();
      await page.keyboard.press('Enter');
      check(file, await page.locator('.gear').nth(0).isVisible(), 'does not show the gear that was chosen by key');
    }

    const passage = page.locator('.gear:visible .symbol[data-passage][data-circuit]').first();
    const circuit = await passage.getAttribute('data-circuit');
    const lit = () => page.evaluate(() => [...document.querySelectorAll('.lit')].map(part => part.dataset.circuit));
    await passage.focus();
    await page.keyboard.press('Enter');
    check(file, (await lit()).length > 0 && (await lit()).every(name => name === circuit), `does not light up ${circuit} by key`);
    await page.keyboard.press('Escape');
    check(file, (await lit()).length === 0, 'does not put the circuit out by Escape');
    await passage.click({ position: { x: 3, y: 3 } });
    check(file, (await lit()).length > 0, `does not light up ${circuit} by mouse`);

    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => axe.run({ resultTypes: ['violations'] }));
    for (const violation of violations.filter(each => ['serious', 'critical'].includes(each.impact)))
      check(file, false, `${colorScheme}: ${violation.id}: ${violation.help}: ${violation.nodes[0].html.slice(0, 160)}`);
    await context.close();
  }

  for (const [format, width] of [['A4', 794], ['Letter', 816]]) {
    // Between margins of 15 mm a side.
    const { page, context } = await open(file, { viewport: { width: width - 113, height: 1000 } }, { media: 'print' });
    for (const part of await cut(page)) check(file, false, `is cut on ${format}: ${part}`);
    const pdf = await page.pdf({ format, preferCSSPageSize: true });
    if (process.env.KEEP) writeFileSync(`${file}.${format}.pdf`, pdf);
    check(file, pdf.length > 10000, `prints next to nothing on ${format}`);
    await context.close();
  }
}

await browser.close();
for (const fault of faults) console.error(fault);
console.log(`${files.length} reports opened in ${chromium}: ${faults.length} faults`);
process.exit(faults.length ? 1 : 0);
