/** The riding view's camera: orthographic, one unit one CSS pixel, y downward from the top; a shear shows the depth. */
import { Matrix4, type OrthographicCamera } from 'three';
import { SHEAR_X, SHEAR_Y } from './riding-layout.ts';

const CAMERA_Z = 1000;

/** Heights and breadths in the plane z = 0 stay exact: a point (x, −y, 0) shows at (x, y) px. */
export function aimObliqueCamera(camera: OrthographicCamera, widthPx: number, heightPx: number): void {
  camera.left = 0;
  camera.right = widthPx;
  camera.top = 0;
  camera.bottom = -heightPx;
  camera.near = 1;
  camera.far = 2 * CAMERA_Z;
  camera.position.z = CAMERA_Z;
  camera.updateMatrixWorld();
  camera.updateProjectionMatrix();
  // The shear in the camera's own frame, where the plane z = 0 lies at −CAMERA_Z.
  const [x, y] = [SHEAR_X, -SHEAR_Y];
  camera.projectionMatrix.multiply(
    new Matrix4().set(1, 0, x, x * CAMERA_Z, 0, 1, y, y * CAMERA_Z, 0, 0, 1, 0, 0, 0, 0, 1),
  );
  camera.projectionMatrixInverse.copy(camera.projectionMatrix).invert();
}
