"""Words of sheets, in five languages: each list stands here once, for the quick and for the careful reader."""
