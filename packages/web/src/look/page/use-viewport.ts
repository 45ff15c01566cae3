import { useEffect, useRef, useState, useSyncExternalStore } from 'react';

export interface Viewport {
  readonly width: number;
  readonly height: number;
  /** Under 700 px, where places stand at the foot and pictures take their phone form. */
  readonly isPhone: boolean;
}

const phoneBelowPx = 700;
let seen: Viewport = { width: 1440, height: 900, isPhone: false };

function look(): Viewport {
  const width = document.documentElement.clientWidth;
  const height = window.innerHeight;
  if (width !== seen.width || height !== seen.height) seen = { width, height, isPhone: width < phoneBelowPx };
  return seen;
}

function onResize(listener: () => void): () => void {
  window.addEventListener('resize', listener);
  return () => window.removeEventListener('resize', listener);
}

/** The size of the window, kept up to date. */
export function useViewport(): Viewport {
  return useSyncExternalStore(onResize, look);
}

const moveMs = 180;

/** Follows a target over 180 ms; at once for people who asked for less motion, and the first time. */
export function useMoved(target: number): number {
  const [shown, setShown] = useState(target);
  const from = useRef(target);
  useEffect(() => {
    const start = from.current;
    const isInstant = start === 0 || window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    const begun = performance.now();
    let frame = 0;
    const step = (now: number) => {
      const share = isInstant ? 1 : Math.min(1, (now - begun) / moveMs);
      from.current = start + (target - start) * (1 - (1 - share) ** 3);
      setShown(from.current);
      if (share < 1) frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [target]);
  return shown;
}
