"""A key with which a firm's own system asks for that firm's job sheets. Its words are nowhere: only their hash is,
and their first few characters, by which the firm knows one key from another."""

from django.db import models
from django.db.models import Q

from triage.models.firm import Firm

MAX_NAME_LENGTH = 80
PREFIX_LENGTH = 8  # of a key's characters: enough to tell the firm's keys apart, far too few to find the rest


class ApiKey(models.Model):
    """`name` says what uses it, in the firm's words; a revoked key stays, so that it is known who read what.
    `prefix` is empty for a key made before first characters were kept, or by a release that keeps none."""

    firm = models.ForeignKey(Firm, on_delete=models.CASCADE, related_name="api_keys")
    name = models.CharField(max_length=MAX_NAME_LENGTH)
    key_hash = models.CharField(max_length=64, unique=True)
    prefix = models.CharField(max_length=PREFIX_LENGTH, blank=True, default="", db_default="", db_column="begins")
    created = models.DateTimeField()
    last_used = models.DateTimeField(null=True, blank=True)
    revoked = models.DateTimeField(null=True, blank=True)

    class Meta:
        verbose_name = "API key"
        constraints = [
            models.CheckConstraint(condition=~Q(name="") & ~Q(key_hash=""), name="api_key_is_named"),
        ]

    def __str__(self) -> str:
        return f"{self.name} ({self.firm.slug})"
