/**
 * Where this server keeps the programs that read codes and labels. What a reader fetches for itself it fetches beside
 * its own file. A folder’s name has the version in it, so its files never change under their names and can be kept for
 * ever: whoever changes one of them changes the name.
 */
export const codeReaderAt = '/readers/codes-zxing-3.1.6-1'
export const labelReaderAt = '/readers/labels-tesseract-7.0.0-1'
