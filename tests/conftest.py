"""What holds for every test: no deadline in property tests, for another program may be busy; no thing is made twice."""

from hypothesis import settings

from tests import quick_commands, quick_database

settings.register_profile("no hurry", deadline=None)
settings.load_profile("no hurry")
quick_database.use()
quick_commands.use()
