"""The command line, thin: parser, answers as text or JSON."""
