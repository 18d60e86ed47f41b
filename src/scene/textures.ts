/** Surfaces painted on canvases: brushed brass, tempered steel, felt, beech, boxwood, glass. The same strokes on every visit. */
import { CanvasTexture, RepeatWrapping, SRGBColorSpace } from 'three';
import { seededRandom } from './seeded-random.ts';

type Painter = (pen: CanvasRenderingContext2D, width: number, height: number) => void;

export function paintedTexture(width: number, height: number, paint: Painter): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('no 2D canvas for textures');
  paint(pen, width, height);
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 4;
  return texture;
}

export function repeating(texture: CanvasTexture, x: number, y: number): CanvasTexture {
  texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.repeat.set(x, y);
  return texture;
}

/** Brass brushed along x: a base colour with fine light and dark strokes. */
export function brushedBrass(middle: string, light: string, dark: string, seed: number): CanvasTexture {
  return paintedTexture(256, 128, (pen, width, height) => {
    const random = seededRandom(seed);
    const ramp = pen.createLinearGradient(0, 0, width, 0);
    ramp.addColorStop(0, dark);
    ramp.addColorStop(0.22, middle);
    ramp.addColorStop(0.55, light);
    ramp.addColorStop(0.8, middle);
    ramp.addColorStop(1, dark);
    pen.fillStyle = middle;
    pen.fillRect(0, 0, width, height);
    pen.globalAlpha = 0.55;
    pen.fillStyle = ramp;
    pen.fillRect(0, 0, width, height);
    for (let stroke = 0; stroke < 700; stroke++) {
      pen.globalAlpha = 0.05 + 0.1 * random();
      pen.fillStyle = random() < 0.5 ? light : dark;
      pen.fillRect(random() * width - 30, random() * height, 40 + random() * 150, 0.6 + random() * 0.7);
    }
  });
}

/** Temper colours of a blued arm: straw and violet by the clamp (right), deep blue outward. */
export function bluedSteel(): CanvasTexture {
  return paintedTexture(512, 32, (pen, width, height) => {
    const ramp = pen.createLinearGradient(0, 0, width, 0);
    ramp.addColorStop(0, '#3d4f92');
    ramp.addColorStop(0.45, '#5b7fc4');
    ramp.addColorStop(0.72, '#4b64aa');
    ramp.addColorStop(0.88, '#5f5590');
    ramp.addColorStop(1, '#8f725c');
    pen.fillStyle = ramp;
    pen.fillRect(0, 0, width, height);
    const random = seededRandom(7);
    for (let stroke = 0; stroke < 260; stroke++) {
      pen.globalAlpha = 0.05 + 0.06 * random();
      pen.fillStyle = random() < 0.5 ? '#a9c0f0' : '#1b2450';
      pen.fillRect(random() * width - 40, random() * height, 60 + random() * 120, 1);
    }
  });
}

export function feltFibres(colour: string, light: string, dark: string): CanvasTexture {
  return paintedTexture(256, 256, (pen, width, height) => {
    pen.fillStyle = colour;
    pen.fillRect(0, 0, width, height);
    const random = seededRandom(11);
    pen.lineWidth = 0.8;
    for (let fibre = 0; fibre < 5200; fibre++) {
      pen.globalAlpha = 0.1 + 0.2 * random();
      pen.strokeStyle = random() < 0.5 ? light : dark;
      const x = random() * width;
      const y = random() * height;
      const turn = random() * 6.283;
      const length = 2 + 5 * random();
      pen.beginPath();
      pen.moveTo(x, y);
      pen.quadraticCurveTo(
        x + length * Math.cos(turn),
        y + length * Math.sin(turn),
        x + length * Math.cos(turn + 0.8),
        y + length * Math.sin(turn + 0.8),
      );
      pen.stroke();
    }
  });
}

/** Planks along x, six across, each with its own tone and grain. */
export function beechPlanks(base: string, light: string, dark: string): CanvasTexture {
  return paintedTexture(1024, 1024, (pen, width, height) => {
    const random = seededRandom(23);
    const planks = 6;
    const across = height / planks;
    for (let plank = 0; plank < planks; plank++) {
      const y = plank * across;
      pen.globalAlpha = 1;
      pen.fillStyle = base;
      pen.fillRect(0, y, width, across);
      pen.globalAlpha = 0.1 + 0.3 * random();
      pen.fillStyle = random() < 0.5 ? light : dark;
      pen.fillRect(0, y, width, across);
      for (let line = 0; line < 120; line++) {
        const at = y + random() * across;
        pen.globalAlpha = 0.04 + 0.12 * random() * random();
        pen.strokeStyle = random() < 0.62 ? dark : light;
        pen.lineWidth = 0.5 + 1.6 * random();
        const from = random() * width - 200;
        const sag = (random() - 0.5) * 10;
        pen.beginPath();
        pen.moveTo(from, at);
        pen.bezierCurveTo(from + 200, at + sag, from + 400, at - sag, from + 500 + 400 * random(), at + sag * 0.5);
        pen.stroke();
      }
      for (let fleck = 0; fleck < 260; fleck++) {
        pen.globalAlpha = 0.12 + 0.12 * random();
        pen.fillStyle = dark;
        pen.fillRect(random() * width, y + random() * across, 3 + 7 * random(), 0.8);
      }
      pen.globalAlpha = 0.35;
      pen.fillStyle = dark;
      pen.fillRect(0, y, width, 1.5);
      pen.globalAlpha = 0.3;
      pen.fillStyle = light;
      pen.fillRect(0, y + 1.5, width, 1);
    }
  });
}

/** Share of the glass texture's breadth that the front pane has; the rest is the side pane's. */
export const FRONT_PANE = 512 / 576;

/**
 * Two panes side by side. Front: a faint tint, two slanted streaks that fade downward, a bright rim. Side,
 * seen almost edge on: a deeper tint.
 */
export function glassPanes(evening: boolean): CanvasTexture {
  return paintedTexture(576, 512, (pen, all, height) => {
    const width = FRONT_PANE * all;
    pen.save();
    pen.beginPath();
    pen.rect(0, 0, width - 4, height);
    pen.clip();
    pen.fillStyle = evening ? 'rgba(140,165,178,0.05)' : 'rgba(150,182,192,0.075)';
    pen.fillRect(0, 0, width, height);
    const streak = (from: number, span: number, strength: number): void => {
      const fade = pen.createLinearGradient(0, 0, 0, height * 0.86);
      fade.addColorStop(0, `rgba(255,255,255,${strength})`);
      fade.addColorStop(0.5, `rgba(255,255,255,${strength * 0.45})`);
      fade.addColorStop(1, 'rgba(255,255,255,0)');
      pen.fillStyle = fade;
      pen.beginPath();
      pen.moveTo(from, 0);
      pen.lineTo(from + span, 0);
      pen.lineTo(from + span - 250, height);
      pen.lineTo(from - 250, height);
      pen.fill();
    };
    const strength = evening ? 0.085 : 0.34;
    streak(286, 74, strength);
    streak(384, 26, strength * 0.85);
    pen.strokeStyle = evening ? 'rgba(200,215,220,0.16)' : 'rgba(255,255,255,0.6)';
    pen.lineWidth = 2;
    pen.strokeRect(1, 1, width - 6, height - 2);
    pen.restore();
    const ramp = pen.createLinearGradient(width + 4, 0, all, 0);
    ramp.addColorStop(0, evening ? 'rgba(120,150,165,0.22)' : 'rgba(140,176,188,0.42)');
    ramp.addColorStop(0.6, evening ? 'rgba(120,150,165,0.1)' : 'rgba(160,192,202,0.22)');
    ramp.addColorStop(1, evening ? 'rgba(120,150,165,0.16)' : 'rgba(190,214,220,0.3)');
    pen.fillStyle = ramp;
    pen.fillRect(width, 0, all - width, height);
  });
}

/** Upright ramp between two colours. */
export function upright(top: string, bottom: string): CanvasTexture {
  return paintedTexture(4, 128, (pen, width, height) => {
    const ramp = pen.createLinearGradient(0, 0, 0, height);
    ramp.addColorStop(0, top);
    ramp.addColorStop(1, bottom);
    pen.fillStyle = ramp;
    pen.fillRect(0, 0, width, height);
  });
}

/** A soft dark patch with a feathered edge, for the shadow that a thing of still shape throws on the page. */
export function softPatch(colour: string, feather: number): CanvasTexture {
  return paintedTexture(256, 256, (pen, width, height) => {
    pen.shadowColor = colour;
    pen.shadowBlur = feather;
    pen.shadowOffsetX = width * 2;
    pen.fillRect(feather - width * 2, feather, width - 2 * feather, height - 2 * feather);
  });
}
