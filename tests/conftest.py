"""What holds for every test: no deadline in property tests, for another program may be busy; tables made in one go."""

from hypothesis import settings

from tests.quick_database import use

settings.register_profile("no hurry", deadline=None)
settings.load_profile("no hurry")
use()
