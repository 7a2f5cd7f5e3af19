/** An answer that a browser keeps as a file, and that no cache keeps. */
export const download = (
  body: ReadableStream<Uint8Array> | string,
  fileName: string,
  contentType: string,
): Response =>
  new Response(body, {
    headers: {
      'content-type': contentType,
      'content-disposition': `attachment; filename="${fileName}"`,
      'cache-control': 'no-store',
    },
  })
