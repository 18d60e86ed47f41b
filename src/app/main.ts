import '../ui/tokens.css';
import './page.css';
import { BenchPage } from './bench-page.ts';

const host = document.querySelector<HTMLElement>('#bench');
if (!host) throw new Error('the page lacks #bench');
const page = new BenchPage(host, undefined, performance.now());
await page.build();

/** Draws with the screen until the page goes. */
function draw(wallMs: number): void {
  page.frame(wallMs);
  requestAnimationFrame(draw);
}
requestAnimationFrame(draw);
