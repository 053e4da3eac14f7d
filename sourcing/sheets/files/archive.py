"""The archive a workbook is packed in, unpacked part by part in pieces: nothing is believed about its sizes.

The directory of an archive says how large its parts are, and may lie. So every part the reader will unpack is
unpacked here first, piece by piece, counted and thrown away; what comes to too much is refused before it can fill
the memory. Names are compared without case, as spreadsheets do.
"""

import io
import struct
import zipfile
import zlib
from collections.abc import Iterator

from sourcing.basics.problem import Place, Refused, refused

MOST_UNPACKED = 400_000_000
"""Bytes of all parts together; a price sheet of 300,000 rows and 12 columns has about 150 million."""
MOST_RATIO = 200
FREE_OF_RATIO = 50_000_000
LONGEST_SMALL_PART = 20_000_000
"""Bytes of a part that is held in memory as a whole: the list of worksheets, the styles."""
PIECE = 1 << 19
LOCAL_HEADER = struct.Struct("<4s22xHH")
STORED, DEFLATED, ENCRYPTED_FLAG = 0, 8, 1
NEVER_READ = (".png", ".jpg", ".jpeg", ".gif", ".emf", ".wmf", ".svg", ".tif", ".tiff", ".bmp", ".ttf", ".odttf")


class Archive:
    """The parts of a packed workbook. `file` is its name, for messages."""

    def __init__(self, data: bytes, file: str) -> None:
        """Reads the directory. Refuses a broken one, two parts of one name, and parts that ask for a password."""
        self.data, self.file, self.unpacked = data, file, 0
        try:
            with zipfile.ZipFile(io.BytesIO(data)) as archive:
                found = archive.infolist()
        except (zipfile.BadZipFile, NotImplementedError, EOFError, OSError, ValueError, struct.error) as error:
            raise self.damaged() from error
        self.parts = {name_key(part.filename): part for part in found}
        if len(self.parts) < len(found):
            raise self.damaged()
        if any(part.flag_bits & ENCRYPTED_FLAG for part in found):
            raise refused("password-protected", place=Place(file=file))
        self._check(sum(self.parts[name].file_size for name in self.names()))

    def damaged(self) -> Refused:
        """The refusal of a workbook that can't be opened."""
        return refused("workbook-damaged", place=Place(file=self.file))

    def too_large(self, size: int) -> Refused:
        """The refusal of what unpacks to `size` bytes."""
        return refused("unpacks-too-large", place=Place(file=self.file), megabytes=size // 1_000_000)

    def names(self) -> list[str]:
        """The names of the parts a reader of cells may unpack, in small letters: all but pictures and fonts."""
        return [name for name in self.parts if not name.endswith((*NEVER_READ, "/"))]

    def pieces(self, name: str) -> Iterator[bytes]:
        """The part unpacked, in pieces of half a million bytes at most; its size is added to the sum of all.

        Refuses a part whose bytes are not those that were packed, once all are read.
        """
        part = self.parts[name]
        size = check = 0
        try:
            for piece in self._unpacked(part):
                size += len(piece)
                check = zlib.crc32(piece, check)
                self._count(len(piece))
                yield piece
        except (zlib.error, struct.error) as error:
            raise self.damaged() from error
        if size != part.file_size or check != part.CRC:
            raise self.damaged()

    def small(self, name: str) -> bytes:
        """The whole part; b'' where there is none. Refuses one of more than 20 MB."""
        if name not in self.parts:
            return b""
        whole = bytearray()
        for piece in self.pieces(name):
            whole += piece
            if len(whole) > LONGEST_SMALL_PART:
                raise self.too_large(len(whole))
        return bytes(whole)

    def _count(self, size: int) -> None:
        self.unpacked += size
        self._check(self.unpacked)

    def _check(self, size: int) -> None:
        if size > MOST_UNPACKED or (size > FREE_OF_RATIO and size > MOST_RATIO * len(self.data)):
            raise self.too_large(size)

    def _unpacked(self, part: zipfile.ZipInfo) -> Iterator[bytes]:
        packed = self._packed(part)
        if part.compress_type == STORED:
            yield from (bytes(packed[at : at + PIECE]) for at in range(0, len(packed), PIECE))
            return
        if part.compress_type != DEFLATED:
            raise self.damaged()
        unpacking = zlib.decompressobj(-zlib.MAX_WBITS)
        for at in range(0, len(packed), PIECE):
            rest: bytes | memoryview = packed[at : at + PIECE]
            while rest and not unpacking.eof:
                yield unpacking.decompress(rest, PIECE)
                rest = unpacking.unconsumed_tail
        while piece := b"" if unpacking.eof else unpacking.decompress(b"", PIECE):
            yield piece
        if not unpacking.eof:
            raise self.damaged()

    def _packed(self, part: zipfile.ZipInfo) -> memoryview:
        start = part.header_offset
        mark, name, extra = LOCAL_HEADER.unpack_from(self.data[start : start + LOCAL_HEADER.size])
        first = start + LOCAL_HEADER.size + name + extra
        if mark != b"PK\x03\x04" or first + part.compress_size > len(self.data):
            raise self.damaged()
        return memoryview(self.data)[first : first + part.compress_size]


def name_key(name: str) -> str:
    """A part's name as it is compared: small letters, strokes forward, none in front."""
    return name.replace("\\", "/").lstrip("/").lower()
