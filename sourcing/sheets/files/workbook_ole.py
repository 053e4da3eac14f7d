"""The compound file an XLS workbook is kept in: which of its sectors make up the stream of records.

Written after [MS-CFB], the format's published description. Chains of sectors may run in circles in a broken file;
none is followed for longer than there are sectors.
"""

import struct
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from .workbook_found import Broken

HEADER = 512
SECTORS_OF_TABLE = struct.Struct("<109I")
LAST_SECTOR = 0xFFFFFFFA
"""Numbers above this end a chain or mark a free sector."""
COUNTS_AT = (40, 44, 64, 72)
"""Where the header says how many sectors there are of each kind. The reader takes memory for as many as are said."""
ENTRY, SMALL_SECTOR = 128, 64
STREAM, ROOT = 2, 5
Table = npt.NDArray[np.uint32]


def stream(data: bytes, names: Sequence[str]) -> bytes:
    """The first of these streams the file has, names without case; b'' for none. Raises Broken."""
    try:
        return _Compound(data).stream(names)
    except (struct.error, IndexError, ValueError) as error:
        raise Broken from error


class _Compound:
    def __init__(self, data: bytes) -> None:
        self.data = data
        power = int.from_bytes(data[30:32], "little")
        if power not in (9, 12):
            raise Broken
        self.size = 1 << power
        counts = (struct.unpack_from("<I", data, at)[0] for at in COUNTS_AT)
        if max(counts) > len(data) // self.size:
            raise Broken
        (self.directory_at,) = struct.unpack_from("<I", data, 48)
        self.least, self.small_at = struct.unpack_from("<II", data, 56)
        self.table = self._table()

    def _table(self) -> Table:
        """What sector follows each sector, joined from the sectors the header and its continuation name."""
        numbers = list(SECTORS_OF_TABLE.unpack_from(self.data, 76))
        (more,) = struct.unpack_from("<I", self.data, 68)
        most = len(self.data) // self.size + 1
        for _ in range(most):
            if more > LAST_SECTOR:
                break
            part = np.frombuffer(self._sector(more), "<u4")
            numbers += part[:-1].tolist()
            more = int(part[-1])
        kept = [number for number in numbers if number < LAST_SECTOR][:most]
        return np.frombuffer(b"".join(map(self._sector, kept)), "<u4")

    def _sector(self, number: int) -> bytes:
        start = (number + 1) * self.size
        found = self.data[start : start + self.size]
        if not found:
            raise Broken
        return found.ljust(self.size, b"\x00")

    def _chain(self, first: int, table: Table) -> list[int]:
        found = []
        while first < LAST_SECTOR:
            found.append(first)
            if len(found) > len(table):
                raise Broken
            first = int(table[first])
        return found

    def _whole(self, first: int) -> bytes:
        return b"".join(map(self._sector, self._chain(first, self.table)))

    def stream(self, names: Sequence[str]) -> bytes:
        """The bytes of the first of these streams; short ones lie in the stream of the root, in small sectors."""
        directory = self._whole(self.directory_at)
        entries = [directory[at : at + ENTRY] for at in range(0, len(directory), ENTRY)]
        if any(self._length(entry) > len(self.data) for entry in entries if entry[66] in (STREAM, ROOT)):
            raise Broken
        root = next((entry for entry in entries if entry[66] == ROOT), b"")
        found = {_name(entry): entry for entry in reversed(entries) if entry[66] == STREAM}
        for name in names:
            if name in found:
                return self._bytes(found[name], root)
        return b""

    def _length(self, entry: bytes) -> int:
        """Four bytes of eight count where sectors are small; the others may hold anything."""
        return int.from_bytes(entry[120 : 124 if self.size == HEADER else 128], "little")

    def _bytes(self, entry: bytes, root: bytes) -> bytes:
        first, length = struct.unpack_from("<II", entry, 116)
        if length >= self.least:
            return self._whole(first)[:length]
        small = self._whole(struct.unpack_from("<I", root, 116)[0])
        table = np.frombuffer(self._whole(self.small_at), "<u4")
        at = [number * SMALL_SECTOR for number in self._chain(first, table)]
        return b"".join(small[start : start + SMALL_SECTOR] for start in at)[:length]


def _name(entry: bytes) -> str:
    length = min(max(int.from_bytes(entry[64:66], "little") - 2, 0), 64)
    return entry[:length].decode("utf-16-le", "replace").lower()
