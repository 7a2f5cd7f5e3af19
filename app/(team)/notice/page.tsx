import type { Metadata } from 'next'
import { NoticeScreen } from '../../cases/notice/NoticeScreen'

export const metadata: Metadata = { title: 'Shut-down notice' }

export default function NoticePage() {
  return <NoticeScreen />
}
