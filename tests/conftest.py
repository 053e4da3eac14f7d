"""What holds for every test: hypothesis sets no deadline, for another program may be busy on the same machine."""

from hypothesis import settings

settings.register_profile("no hurry", deadline=None)
settings.load_profile("no hurry")
