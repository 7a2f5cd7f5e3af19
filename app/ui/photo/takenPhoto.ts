import type { PreparedPicture } from '@/lib/device/picture/prepare'
import { type PictureType, pictureTypes } from '@/lib/records/kinds/photo'

/**
 * A photo that was taken for a form and is not saved yet: what a `photo` record says of its picture. It is plain data,
 * so it goes into the form's draft; the picture itself is on the device under its hash.
 */
export type TakenPhoto = Omit<PreparedPicture, 'blob'>

export const takenPhotoOf = ({ blob: _, ...taken }: PreparedPicture): TakenPhoto => taken

/** What the file lists of a phone are asked for; it turns its own formats into the first of these. */
export const accepted: string = ([...pictureTypes] satisfies PictureType[]).join(',')
