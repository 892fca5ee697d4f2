"""A recipe brought under the caps by the smallest change."""
