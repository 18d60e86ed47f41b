import '../ui/tokens.css';
import './page.css';
import { Address } from './address.ts';
import { BenchPage } from './bench-page.ts';
import { openScriptDoor } from './script-door.ts';

const host = document.querySelector<HTMLElement>('#bench');
if (!host) throw new Error('the page lacks #bench');
const script = new URLSearchParams(window.location.search).get('script');
const scripted = script !== null;
const startMs = scripted ? 0 : performance.now();
const opened = await Address.read();
const page =
  opened && 'linked' in opened
    ? BenchPage.fromLink(host, opened.linked, startMs)
    : new BenchPage(host, undefined, startMs);
if (script === 'light') page.drawing = 'light';
await page.build();
if (opened && 'refused' in opened) page.say(opened.refused);

if (scripted) openScriptDoor(page);
else requestAnimationFrame(draw);

/** Draws with the screen until the page goes. */
function draw(wallMs: number): void {
  requestAnimationFrame(draw); // first: a frame that fails must not be the last
  page.frame(wallMs);
}
