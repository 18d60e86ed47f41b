/** Fades a picture into the page at its edges. */
export function fadeEdges(canvas: HTMLCanvasElement): void {
  const across = 'linear-gradient(to right, transparent, #000 9%, #000 91%, transparent)';
  const down = 'linear-gradient(to bottom, transparent, #000 7%, #000 91%, transparent)';
  canvas.style.maskImage = `${across}, ${down}`;
  canvas.style.maskComposite = 'intersect';
}
