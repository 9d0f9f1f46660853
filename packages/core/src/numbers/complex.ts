/** A complex number: a reflection coefficient, an impedance in Ω or an admittance in S. */
export interface Complex {
  readonly real: number;
  readonly imaginary: number;
}

export const complex = (real: number, imaginary: number): Complex => ({ real, imaginary });

/** A complex number from magnitude and angle in degrees. */
export function fromPolarDegrees(magnitude: number, angleDegrees: number): Complex {
  const angle = (angleDegrees * Math.PI) / 180;
  return { real: magnitude * Math.cos(angle), imaginary: magnitude * Math.sin(angle) };
}

export const add = (a: Complex, b: Complex): Complex => complex(a.real + b.real, a.imaginary + b.imaginary);
export const subtract = (a: Complex, b: Complex): Complex => complex(a.real - b.real, a.imaginary - b.imaginary);
export const scale = (a: Complex, factor: number): Complex => complex(a.real * factor, a.imaginary * factor);

export const multiply = (a: Complex, b: Complex): Complex =>
  complex(a.real * b.real - a.imaginary * b.imaginary, a.real * b.imaginary + a.imaginary * b.real);

/** a / b by Smith's method, which does not overflow where |b|² would; division by zero gives infinities or NaN. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.real) >= Math.abs(b.imaginary)) {
    const ratio = b.imaginary / b.real;
    const denominator = b.real + b.imaginary * ratio;
    return complex((a.real + a.imaginary * ratio) / denominator, (a.imaginary - a.real * ratio) / denominator);
  }
  const ratio = b.real / b.imaginary;
  const denominator = b.real * ratio + b.imaginary;
  return complex((a.real * ratio + a.imaginary) / denominator, (a.imaginary * ratio - a.real) / denominator);
}

export const magnitude = (a: Complex): number => Math.hypot(a.real, a.imaginary);

/** e to the power of a complex number. */
export function exponential({ real, imaginary }: Complex): Complex {
  const size = Math.exp(real);
  return complex(size * Math.cos(imaginary), size * Math.sin(imaginary));
}

/** The root with the positive real part. */
export function squareRoot({ real, imaginary }: Complex): Complex {
  const size = Math.hypot(real, imaginary);
  return complex(Math.sqrt((size + real) / 2), Math.sign(imaginary) * Math.sqrt(Math.max(0, size - real) / 2));
}
