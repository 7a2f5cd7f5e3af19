/** The longest side, in pixels, that a picture is read at: finer detail costs time and helps no reader. */
export const longestSide = 1600

/**
 * The pixels of a picture or of a video's present image, made smaller where a side is longer than `most`.
 * @throws Error when the browser gives no canvas to draw on
 */
export function pixelsOf(
  source: CanvasImageSource,
  size: { width: number; height: number },
  most = longestSide,
): ImageData {
  const scale = Math.min(1, most / Math.max(size.width, size.height))
  const [width, height] = [
    Math.max(1, Math.round(size.width * scale)),
    Math.max(1, Math.round(size.height * scale)),
  ]
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (context === null) throw new Error('This browser gives no canvas to draw on')
  context.drawImage(source, 0, 0, width, height)
  return context.getImageData(0, 0, width, height)
}

/** The pixels of a still picture, upright as its metadata says; undefined when it is no picture that can be opened. */
export async function pixelsOfFile(file: Blob): Promise<ImageData | undefined> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
    try {
      return pixelsOf(bitmap, bitmap)
    } finally {
      bitmap.close()
    }
  } catch (cause) {
    // The one exception for what is no picture, or one in a format that this browser does not know (HTML, 8.10).
    if (cause instanceof DOMException && cause.name === 'InvalidStateError') return undefined
    throw cause
  }
}
