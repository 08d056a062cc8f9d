"""What holds for every test: hypothesis has no deadline, because a busy machine is no bug."""

from hypothesis import settings

settings.register_profile("logbook", deadline=None)
settings.load_profile("logbook")
