"""The program on a real terminal."""
