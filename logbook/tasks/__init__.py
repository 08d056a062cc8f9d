"""What a user can do, each thing once: plain values in, plain results out."""
