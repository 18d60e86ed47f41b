/** What brass and steel mirror: a bright room of nine plain panels with a window front left. */
import {
  BoxGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  PlaneGeometry,
  PMREMGenerator,
  Scene,
  type WebGLRenderer,
  type WebGLRenderTarget,
} from 'three';
import type { Theme } from '../contract/view.ts';

/** The caller disposes what is returned. */
export function mirroredRoom(renderer: WebGLRenderer, theme: Theme): WebGLRenderTarget {
  const scene = new Scene();
  const parts: { dispose(): void }[] = [];
  const evening = theme === 'evening';
  const panel = (
    color: string,
    strength: number,
    width: number,
    height: number,
    x: number,
    y: number,
    z: number,
  ): void => {
    const geometry = new PlaneGeometry(width, height);
    const material = new MeshBasicMaterial({ color, side: DoubleSide });
    material.color.multiplyScalar(strength);
    const mesh = new Mesh(geometry, material);
    mesh.position.set(x, y, z);
    mesh.lookAt(0, 0, 0);
    scene.add(mesh);
    parts.push(geometry, material);
  };
  const shell = new BoxGeometry(40, 30, 40);
  const inside = new MeshBasicMaterial({ color: evening ? '#3a3028' : '#b9b1a4', side: DoubleSide });
  scene.add(new Mesh(shell, inside));
  parts.push(shell, inside);
  const window = evening ? 4.6 : 7;
  const pane = evening ? '#ffdcae' : '#fffdf8';
  for (const x of [-11, -6.4]) for (const y of [4.2, 9.4]) panel(pane, window, 4, 4.6, evening ? -x : x, y, 13);
  panel(evening ? '#8a7458' : '#fff6e6', evening ? 1.1 : 1.25, 38, 22, 0, 2, -17);
  panel(evening ? '#6a5a48' : '#ffffff', evening ? 0.8 : 1.5, 38, 38, 0, 14, 0);
  panel(evening ? '#4a3a28' : '#d6cfc2', evening ? 0.7 : 1.1, 38, 38, 0, -14, 0);
  panel('#16130f', 1, 3.2, 26, 3, 0, 17);
  panel(evening ? '#5a4a38' : '#efe6d6', evening ? 0.5 : 0.9, 26, 24, 18, 0, 6);
  const generator = new PMREMGenerator(renderer);
  const target = generator.fromScene(scene, 0.02, 0.1, 100, { size: 64 });
  generator.dispose();
  for (const part of parts) part.dispose();
  return target;
}
