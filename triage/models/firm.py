"""A repair firm is a tenant: its own settings, staff and job sheets. A member is one person's place in one firm."""

from django.conf import settings
from django.core.validators import RegexValidator
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

MAX_RETENTION_DAYS = 3650

is_colour = RegexValidator(r"^#[0-9a-f]{6}\Z", _("Write the colour as # and six of 0-9 and a-f, such as #a83c12."))


class Firm(models.Model):
    """`origins` may frame the check and call the API; `prices`, `hours` and `areas` are shown, as the firm wrote them,
    to who is about to ask for a visit: on the form of the hand-over and on the agent's call page.

    `webhook_secret` signs what is sent to `webhook_url`; it has to be readable, as every shared signing key has.
    `wants_repair_form` is the firm's wish to use the European repair form where that may apply.
    """

    slug = models.SlugField(max_length=50, unique=True)
    name = models.CharField(max_length=120)
    region = models.CharField(max_length=20)
    accent = models.CharField(max_length=7, default="#a83c12", validators=[is_colour])
    origins = models.JSONField(default=list, blank=True)
    prices = models.JSONField(default=dict, blank=True)
    hours = models.JSONField(default=dict, blank=True)
    areas = models.JSONField(default=list, blank=True)
    address = models.CharField(max_length=300, blank=True)
    telephone = models.CharField(max_length=40, blank=True)
    email = models.EmailField(blank=True)
    webhook_url = models.CharField(max_length=500, blank=True)
    webhook_secret = models.CharField(max_length=120, blank=True)
    wants_repair_form = models.BooleanField(default=False)
    retention_days = models.PositiveIntegerField(default=180)
    created = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(retention_days__gte=1, retention_days__lte=MAX_RETENTION_DAYS), name="firm_keeps_for_days"
            ),
            models.CheckConstraint(condition=Q(webhook_url="") | ~Q(webhook_secret=""), name="firm_webhook_is_signed"),
            models.CheckConstraint(condition=~Q(slug="") & ~Q(name=""), name="firm_has_a_name"),
        ]

    def __str__(self) -> str:
        return self.name


class Role(models.TextChoices):
    """What a member may do: an owner everything, a repairer job sheets and outcomes, an agent take calls."""

    OWNER = "owner", _("Owner")
    REPAIRER = "repairer", _("Repairer")
    AGENT = "agent", _("Agent")


class Member(models.Model):
    """`totp_secret` is empty until the person sets up a second factor; `totp_last` is the last time step used, so
    that no code works twice."""

    user = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.CASCADE, related_name="memberships")
    firm = models.ForeignKey(Firm, on_delete=models.CASCADE, related_name="members")
    role = models.CharField(max_length=10, choices=Role)
    totp_secret = models.CharField(max_length=64, blank=True)
    totp_last = models.BigIntegerField(default=0)
    created = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["user", "firm"], name="member_once_in_a_firm"),
            models.CheckConstraint(condition=Q(role__in=Role.values), name="member_role_is_known"),
        ]

    def __str__(self) -> str:
        return f"{self.user} ({self.role}, {self.firm.slug})"
