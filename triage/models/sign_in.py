"""Links into a firm that work once, and what the release before wrote about attempts to sign in."""

from django.db import models
from django.db.models import Q

from triage.models.firm import Firm, Role


class SignInTry(models.Model):
    """Written by the release before only, as keyed hashes that name nobody; attempts are request counts now. The table
    goes a release later."""

    account = models.CharField(max_length=64)
    address = models.CharField(max_length=64)
    at = models.DateTimeField()

    class Meta:
        verbose_name_plural = "sign-in tries"
        indexes = [
            models.Index(fields=["account", "at"], name="try_of_account"),
            models.Index(fields=["address", "at"], name="try_from_address"),
        ]

    def __str__(self) -> str:
        return f"try at {self.at:%Y-%m-%d %H:%M}"


class Invitation(models.Model):
    """A link that works once, until `expires`; `name` is how the owner calls whoever it is meant for."""

    firm = models.ForeignKey(Firm, on_delete=models.CASCADE, related_name="invitations")
    name = models.CharField(max_length=120)
    role = models.CharField(max_length=10, choices=Role)
    token_hash = models.CharField(max_length=64, unique=True)
    created = models.DateTimeField()
    expires = models.DateTimeField()
    used = models.DateTimeField(null=True, blank=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=Q(role__in=Role.values), name="invitation_role_is_known"),
            models.CheckConstraint(condition=Q(expires__gt=models.F("created")), name="invitation_ends"),
        ]

    def __str__(self) -> str:
        return f"{self.name} ({self.role}, {self.firm.slug})"
